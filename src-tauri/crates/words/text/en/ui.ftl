# Labels of the windows; every id begins with ui-. A label has no variables and stands on one line. A word in square
# brackets is a place that the window fills with what the person sees beside it: [who] stands for initials.

ui-lang = en
ui-app-name = Bayhand
ui-no-answer = The program did not answer, so nothing was recorded. What is typed stays here: try again, and if it happens again, close the windows and start the program afresh. The record up to here is safe.
ui-key-enter = Enter
ui-path = Stages of the job

## Start
ui-start-practice = Practice on a simulated car
ui-start-practice-says = Nothing can break: the car, its faults and its readings come from a number.
ui-start-practice-car = Practice car
ui-start-practice-begin = Begin a practice job
ui-start-scenario = Which practice job
ui-start-scenario-none = A car by its number
ui-start-seed = Number of the car (the same number gives the same car)
ui-start-seed-wrong = That is no whole number of at most 15 digits, so no car could be made from it. Write one, such as 1.
ui-start-wrong = What is wrong
ui-start-wrong-none = Nothing
ui-start-wrong-one = One thing
ui-start-wrong-two = Two things
ui-start-real = A car in the bay
ui-start-real-says = The job begins with the intake: have the maker's data and the customer's wishes at hand.
ui-start-car = Name of the car
ui-start-real-begin = Begin the job
ui-start-open = Take up a job that was set aside
ui-start-first = Before the first job
ui-start-first-people = Enter the people: who works, a second person for the checks, a supervisor who seals.
ui-start-first-enter = People
ui-start-first-practice = Go through a practice job once: every stage comes up, and nothing can break.
ui-start-first-board = Choose the screen that the board across the bay fills, its size, and from how far it is looked at.
ui-start-first-pedal = Choose your units, and teach the key of the foot pedal if there is one.
ui-start-first-settings = Units, board and pedal
ui-procedure = Procedure
ui-procedure-change = Another procedure
ui-procedure-title = The procedure of the next job
ui-procedure-place = A procedure of this workshop: file with its whole path
ui-procedure-look = Look at it
ui-procedure-looking = It is being proved, over all its states. This takes some seconds, up to a minute.
ui-procedure-shipped = Use the shipped one
ui-procedure-reason = Why it may be used all the same
ui-procedure-sign = Sign for it
ui-start-look = Only look first
ui-start-look-says = Practise on a simulated car by names alone: nothing can break, and nothing of it counts.

## The first start
ui-first-title = This workshop
ui-first-says = The first person is a supervisor, who enters the others and seals jobs.
ui-first-make = Make the first supervisor
ui-first-lost = PIN forgotten: a supervisor gives a new one. Passphrase forgotten: nobody can read it back. The recovery code, which comes next, gives a new one, and seals made before stay valid. Code lost as well: then nobody can seal with this key or keep this list any more.
ui-pin-form = PIN, 4 to 12 digits
ui-passphrase-form = Passphrase, 10 characters or more
ui-recovery-title = Recovery code
ui-recovery-says = Write this down and keep it away from this computer. It is shown this once. Whoever has it can give a supervisor a new PIN and passphrase; that is recorded, and the code is used up by it.
ui-recovery-kept = It is written down

## Secrets
ui-pin = PIN
ui-pin-of = PIN of [who]
ui-pin-new = New PIN
ui-pin-change = Change my PIN
ui-pin-forgotten = PIN forgotten
ui-pin-rub = Rub out the last digit
ui-pin-waits = Wrong PINs were entered. The next try in [seconds] s.
ui-passphrase = Passphrase
ui-passphrase-new = New passphrase
ui-secret-again = Once more
ui-secret-differs = The two are not the same. Type both again.
ui-recover = Recover
ui-recover-says = A supervisor who lost PIN or passphrase gets new ones for the recovery code of this book. It is recorded, and the code is used up by it.
ui-recovery-code = Recovery code

## The list of people
ui-people = People
ui-people-add = Add a person
ui-people-change = Change
ui-people-let-go = Let go
ui-people-let-go-says = They can no longer sign on. What they did stays in the record under their name.
ui-people-reset-pin = New PIN
ui-people-reset-pin-says = For somebody who forgot theirs. They change it when they are next at the car.
ui-people-set-key = New key
ui-people-set-key-says = The key that a supervisor seals with, opened by their own passphrase. Seals made by an earlier key stay valid.
ui-people-by = Supervisor
ui-people-passphrase = Their passphrase
ui-people-alone = May do alone, with nobody of higher rank at the job
ui-people-name = Name
ui-people-key = Fingerprint of the key
ui-people-none = none
ui-people-left = has left
ui-people-acts = To do

## Who works
ui-sign-initials = Initials
ui-sign-name = Name
ui-sign-rank = Rank
ui-sign-on = Sign on
ui-sign-on-title = Sign on to check this job
ui-rank-trainee = Trainee
ui-rank-technician = Technician
ui-rank-supervisor = Supervisor
ui-who-nobody = Who acts?
ui-who-title = Who acts now?
ui-who-another = Sign on another person
ui-who-take-over = Take over here
ui-who-leave = Leave the car
ui-job-practice = Simulated car
ui-job-aside = Set aside

## Hazards
ui-hazards = Hazards of this step
ui-hazards-first = Read and acknowledge what stands above. The step opens after that.
ui-hazard-acknowledge = I, [who], have read this
ui-hazard-acknowledge-nobody = Say who acts first

## A step
ui-step-why = Why?
ui-step-hold = Hold the job
ui-step-again = Say it again
ui-step-undo = Undo
ui-step-reopen = Open a step again
ui-step-stop = Stop the job
ui-step-stopping = The job is being stopped: these steps make the car safe first.
ui-step-seal-in-review = A supervisor who did not work on this job seals it, or sends it back, in the review window.
ui-field-unit = Unit
ui-axle-front = Front
ui-axle-rear = Rear
ui-corner-fl = Front left
ui-corner-fr = Front right
ui-corner-rl = Rear left
ui-corner-rr = Rear right
ui-verdict-inside = Inside
ui-verdict-outside = Outside
ui-verdict-cannot-tell = Cannot tell yet
ui-gate-waive = Waive with a reason
ui-timer-over = The wait is over.
ui-turn-from-above = from above
ui-turn-towards = towards the spring
ui-turn-away = away from the spring
ui-turn-leave = leave as it is
ui-read-back = Is this what you read?
ui-read-back-right = Yes, record it
ui-read-back-change = Change it
ui-line-aim = Place on the trade line
ui-line-aim-none = no place chosen
ui-line-aimed = Aim: cross weight
ui-line-steps-lead = whole steps lead here
ui-judge-choose = Choose below the line, or drag the mark along it: what would be turned, and what would come of it, stands here.
ui-judge-turns = turns
ui-judge-came = Found, and each round
ui-judge-then = If turned so
ui-turn-worked-out = Worked out, in turns:

## Held and ended
ui-held = On hold
ui-held-resume = Go on with the job
ui-ended = This job has ended
ui-ended-leave = Leave this job

## Dialogs
ui-dialog-reason = Reason, for the record
ui-dialog-step = Which step
ui-dialog-cancel = Back
ui-hold-title = Hold the job
ui-hold-says = The job waits where it is. Leave the car so that it is safe for whoever comes past.
ui-stop-title = Stop the job for good
ui-stop-says = The car is made safe first, step by step; then the job ends and cannot be taken up again.
ui-reopen-title = Open a step again
ui-reopen-says = What rests on it will have to be done again.
ui-waive-title = Go on although the gate did not pass
ui-waive-who = Who waives it
ui-seal-title = Seal the job
ui-seal-who = Who seals it
ui-send-back-title = Send the job back to a step
ui-send-back-who = Who sends it back

## Figures
ui-figures-name = Figure
ui-figures-found = As found
ui-figures-left = Now
ui-figures-wanted = Wanted
ui-figures-verdict = Verdict
ui-angles-name = Angle
ui-angles-plan = What would be turned
ui-figures-made-of = ± from
ui-plot-came = came, with its uncertainty
ui-plot-predicted = predicted before

## Settings
ui-settings = Settings
ui-settings-close = Done
ui-settings-shown = Units and board
ui-settings-spoken = Voice and pedal
ui-settings-units = Units of the workshop
ui-settings-units-of = Units for [who]
ui-settings-units-says = Loads, heights, pressures and angles are shown and typed in these. What was typed is always kept as it was typed.
ui-settings-mass = Loads
ui-settings-length = Heights
ui-settings-pressure = Pressures
ui-settings-angle = Angles
ui-settings-board = Board across the bay
ui-settings-screen = Screen
ui-settings-screen-none = A window
ui-settings-screen-here = this one
ui-settings-distance = Looked at from, m
ui-settings-diagonal = Diagonal, inches
ui-settings-pedal = Foot pedal
ui-settings-pedal-learn = Learn its key
ui-settings-pedal-press = Press the pedal now
ui-settings-pedal-forget = No pedal
ui-settings-pedal-is = The pedal sends [key]. It goes on with the step, and never acknowledges a hazard, waives or seals.
ui-settings-pedal-none = A pedal sends a key: it then does what Enter does, and never acknowledges a hazard, waives or seals.
ui-settings-pedal-unsuited = That key types or moves between fields. Set the pedal to another, such as F13 or Page Down.
ui-settings-language = Language
ui-settings-voice = Voice
ui-settings-voice-of = Voice for [who]
ui-settings-say = Say steps, hazards, waits and what is read back
ui-settings-say-on = Say them
ui-settings-say-off = Silent
ui-settings-volume = Loudness, %
ui-settings-speed = Words a minute
ui-settings-voice-name = Voice of the system
ui-settings-voice-usual = the usual one
ui-notice = Notice: something is missing
ui-notice-close = Seen
ui-settings-hearing = Spoken answers
ui-settings-hear = Heard
ui-settings-hear-keys = Not: keys and touch only
ui-settings-hear-hold = While a key is held
ui-settings-hear-free = Hands-free
ui-settings-talk-learn = Key to talk: [key]. Learn another
ui-settings-model = Voice model
ui-settings-model-usual = the usual place
ui-talk = Hold to talk
ui-talk-listens = Listening
ui-talk-free = Speak, or hold
ui-heard = Heard
ui-heard-right = That is right
ui-heard-wrong = Not so

## Bay
ui-bay-silent = The program does not answer. Look at the window at the car.
ui-bay-more = The rest stands in the window at the car.

## Review
ui-review-jobs = Jobs
ui-review-record = Step by step
ui-review-number = No.
ui-review-when = When
ui-review-what = What
ui-review-entered = Entered
ui-review-used = Used
ui-review-note = Note
ui-review-line = Chosen on the trade line
ui-review-footprints = Loads as left
ui-review-footprints-found = Loads as found
ui-review-loads = Loads over the rounds
ui-review-times = Time by stage
ui-review-all-plots = Plots of both axles too
ui-review-figures = Figures
ui-review-instruments = Instruments, calibration due
ui-review-seal = Seal as supervisor
ui-review-send-back = Send back to a step
ui-review-verify = Check the chain
ui-review-sheet = Write the sheet

ui-review-coach = Coach
ui-coach-title = What the coach saw
ui-coach-wrong = Not as it was taken to be
ui-coach-slips = Written down other than it was shown
ui-coach-score = What counted
ui-close = Close
## Cars of the book
ui-cars = Cars
ui-cars-search = Search: name, initials, job number
ui-car-visits = Visits
ui-car-learned = What was learned
ui-car-turn = One turn of the collar at
ui-car-travel = moves it by
ui-car-load = load there
ui-car-height = height there
ui-car-left = Last settings
ui-instruments = Instruments
ui-instrument-stated = Stated uncertainty
ui-instrument-not-stated = Not recorded
ui-instrument-calibrated = Calibrated
ui-instrument-due = Calibration due
ui-instrument-checks = Checks
ui-instrument-earlier = Earlier checks
ui-origin-instrument = With
ui-origin-configuration = Car
ui-origin-entry = To entry no.

## The book, and what is kept apart
ui-book = Book
ui-book-by = Who
ui-book-copies = Copies of the book
ui-book-copies-says = One copy a day, the last of it, made at the end of each job while the book stays in use, and checked. Name a folder on another disk.
ui-book-copies-place = Folder for copies, with its whole path; empty: none are made
ui-book-copy-now = Keep this place, and copy now
ui-book-copying = The book is being copied and checked.
ui-book-imported = Jobs of other bays
ui-book-imported-says = A job that another bay exported is checked, entry by entry and seal by seal, and taken in once.
ui-book-import-place = Exported job: file with its whole path
ui-book-take-in = Take it in
ui-book-taking-in = The job is being checked and taken in.
ui-book-reading = The job is being read.
ui-review-export = Export the job
ui-customer = Customer data
ui-customer-says = The least that is needed. It stands apart from the record and is not in exports: once erased, the record still verifies.
ui-customer-keep = Keep it
ui-customer-erase = Erase it
ui-customer-erase-reason = Why it is erased; by a supervisor

## Corrections, filter, records
ui-correct = Correct
ui-correct-says = Nothing rests on this text. What it said first stays in the record beside the correction.
ui-correct-which = Which text
ui-correct-text = What it should have said
ui-withdraw = Do again
ui-filter = Filter
ui-filter-all = all
ui-filter-car = Car
ui-filter-person = Person
ui-filter-from = From
ui-filter-until = Until
ui-filter-departed = Departed from the procedure
ui-person-record = Record
ui-person-stage = Stage
ui-person-done = Steps done
ui-person-held = Held by a gate
ui-manual = Manual
ui-manual-search = Search in the manual
ui-manual-asks = Entered
ui-manual-gates = Must hold
ui-manual-none = No step holds these words.
