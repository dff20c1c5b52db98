//! Says lines one after the other, on a thread of its own: the queue decides, the voice speaks.

use super::queue::{Act, Event, Line, Queue};
use super::voice::{Manner, Saying, VoiceError};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::Duration;

/// What speaks: the system's voice, or in tests one that writes down.
pub trait Voice: Send + 'static {
    /// Begins to say words.
    ///
    /// # Errors
    /// Nothing speaks here.
    fn begin(&mut self, words: &str, manner: &Manner) -> Result<Box<dyn Utterance>, VoiceError>;
}

/// A line that is being said.
pub trait Utterance: Send {
    /// `Some` once it has come to its end: whether it was said.
    fn ended(&mut self) -> Option<Result<(), VoiceError>>;
    /// Stops it at once.
    fn cut(self: Box<Self>);
}

/// The voice of the system.
pub struct SystemVoice;

impl Voice for SystemVoice {
    fn begin(&mut self, words: &str, manner: &Manner) -> Result<Box<dyn Utterance>, VoiceError> {
        Ok(Box::new(Saying::begin(words, manner)?))
    }
}

/// How often a line under way is looked at.
const LOOK: Duration = Duration::from_millis(20);

enum Told {
    Manner(Manner),
    Event(Event),
}

/// Who says lines. Dropped, it falls silent.
pub struct Speaker {
    tell: mpsc::Sender<Told>,
    says: Arc<AtomicBool>,
}

impl Speaker {
    /// Starts to wait for lines. `trouble` is told each time that a line could not be said.
    pub fn start(voice: impl Voice, trouble: impl FnMut(VoiceError) + Send + 'static) -> Self {
        let (tell, told) = mpsc::channel();
        let says = Arc::new(AtomicBool::new(false));
        let mouth = Mouth { voice, trouble, queue: Queue::default(), manner: None, saying: None, says: says.clone() };
        std::thread::spawn(move || mouth.run(&told));
        Self { tell, says }
    }

    /// How lines are said from now on.
    pub fn speak_so(&self, manner: Manner) {
        self.tell(Told::Manner(manner));
    }

    /// Says a line, when its turn comes.
    pub fn say(&self, line: Line) {
        self.tell(Told::Event(Event::Say(line)));
    }

    /// A person begins to speak, or has ended.
    pub fn person(&self, speaks: bool) {
        self.tell(Told::Event(if speaks { Event::PersonBegins } else { Event::PersonEnds }));
    }

    /// True while a line is being said.
    pub fn says(&self) -> bool {
        self.says.load(Ordering::Relaxed)
    }

    /// Nothing more is to be said.
    pub fn hush(&self) {
        self.tell(Told::Event(Event::Hush));
    }

    fn tell(&self, told: Told) {
        // The thread ends only with this speaker.
        let _ = self.tell.send(told);
    }
}

/// What runs on the thread.
struct Mouth<V, T> {
    voice: V,
    trouble: T,
    queue: Queue,
    manner: Option<Manner>,
    saying: Option<Box<dyn Utterance>>,
    /// For others to see: whether a line is being said.
    says: Arc<AtomicBool>,
}

impl<V: Voice, T: FnMut(VoiceError)> Mouth<V, T> {
    fn run(mut self, told: &mpsc::Receiver<Told>) {
        loop {
            let next = if self.saying.is_some() {
                told.recv_timeout(LOOK)
            } else {
                told.recv().map_err(|_| RecvTimeoutError::Disconnected)
            };
            match next {
                Ok(Told::Manner(manner)) => self.manner = Some(manner),
                Ok(Told::Event(event)) => self.happened(event),
                Err(RecvTimeoutError::Timeout) => {}
                Err(RecvTimeoutError::Disconnected) => break,
            }
            if let Some(ended) = self.saying.as_mut().and_then(|saying| saying.ended()) {
                self.saying = None;
                if let Err(error) = ended {
                    (self.trouble)(error);
                }
                self.happened(Event::Said);
            }
            self.says.store(self.saying.is_some(), Ordering::Relaxed);
        }
        if let Some(saying) = self.saying.take() {
            saying.cut();
        }
    }

    fn happened(&mut self, event: Event) {
        let mut events = vec![event];
        while let Some(event) = events.pop() {
            for act in self.queue.after(event) {
                match act {
                    Act::Cut => {
                        if let Some(saying) = self.saying.take() {
                            saying.cut();
                        }
                    }
                    Act::Begin(line) => match self.begin(&line) {
                        Ok(saying) => self.saying = Some(saying),
                        Err(error) => {
                            (self.trouble)(error);
                            events.push(Event::Said);
                        }
                    },
                }
            }
        }
    }

    fn begin(&mut self, line: &Line) -> Result<Box<dyn Utterance>, VoiceError> {
        let usual = Manner::usual(crate::spoken::number::Tongue::English);
        self.voice.begin(&line.words, self.manner.as_ref().unwrap_or(&usual))
    }
}
