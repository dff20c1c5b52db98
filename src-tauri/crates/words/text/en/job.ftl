# What the running job says: what was found, refusals, readings, the record, the sheet.

## Titles and places in the job

job-title = { $car }, job { $number }
job-unnamed = Job { $number }
person = { $initials }, { $rank }
start = Take up a job that was set aside, or begin a new one.
start-first = Set up this workshop, or only look first.
start-empty = No job is open yet. Begin a practice job to learn the steps, or a job on a real car.
sign-on-first = Sign on with your initials first. Everything that is recorded carries a name.
held = On hold since { $at }, by { $by }: “{ $reason }”. Whoever goes on checks the car first.
ended-sealed = This job is sealed. The sheet is written in the review window.
ended-coach = What was wrong at this practice job, and where it showed, the coach says in the review window.
ended-stopped = This job was stopped and the car was made safe. Nothing more is recorded here.
count-step = { $stage }, step { $number } of { $of }
count-round = { $stage }, round { $round }
because = First, because { $need }.
action-record = Record
action-decide = Record this decision
acknowledged = { $by }, { $at }, by hand
state-done = done
state-now = now
state-again = to do again
state-to-come = to come
timer-settle = Let the car rest
may-waive = { $rank } or above may waive this, with a reason, if not at work on this step.

## Fields

check-yes = Yes
check-no = No, found wrong
field-last = { $at }: { $text }
text-none = Write “none” where nothing is meant.
range = { $min } to { $max } { $unit }
range-looks = { $min } to { $max } { $unit }, up to three looks with blanks between
shows-paper = Job papers
shows-pad = Pad shows
shows-height-gauge = Height gauge shows
shows-laser = Laser shows
shows-rule = Rule shows
shows-shims = Shims laid out
shows-pressure-gauge = Gauge shows
shows-angle-gauge = Gauge shows
shows-plate = Plate shows
shows-steering-level = Level on the steering wheel
shows-tape = Tape shows
shows-link = Bolt slides in at
shows-worked-out = Worked out
shows-agreed = Agreed
shows-nothing = The practice car shows nothing

## What to turn

turn-count = corner { $number } of 4
turn-raise-car = Raise the car at { $corner }
turn-lower-car = Lower the car at { $corner }
turn-leave-car = Leave { $corner } as it is
turn-collar = Collar { $turns } { $spring }, { $way } seen from above: { $mm } of travel.
turn-leave-collar = Do not turn this collar. Enter 0.
turn-towards = towards the spring
turn-away = away from the spring
turn-clockwise = clockwise
turn-anticlockwise = anticlockwise
turns-quarter = a quarter turn
turns-half = half a turn
turns-three-quarters = three quarters of a turn
turns-one = one turn
turns-whole = { $whole } turns
turns-and-quarter = { $whole } and a quarter turns
turns-and-half = { $whole } and a half turns
turns-and-three-quarters = { $whole } and three quarter turns
turns-part = { $part } of a turn
turns-and-part = { $whole } { $part } turns
aim-turn-cross = the cross weight
aim-turn-front = the front axle
aim-turn-rear = the rear axle
aim-turn-place = a cross weight of { $cross }
why-assumed = What a turn does is assumed: the next reading shows it.
why-known = Springs and ratios are those learned on this car on { $on }, { $days } days before.
worth-turn = Turning { $collars } lifts the chance that { $aim } and the heights are inside from { $now } to { $planned }.
worth-nothing = No turn raises the chance that { $aim } and the heights are inside by more than the readings can show: it is { $now } now and { $best } at best.
worth-costs = The car is best left as it is: the chance is { $now } now, and what would raise it to { $best } costs more elsewhere.
worth-limits = The height limits are broken now, and no turn that the collars have left mends that wholly.
against-excess = After these turns the heights still stand { $mm } beyond their limits, the least that can be had.
against-up = More would help, but the collar at { $corner } cannot be turned further up.
against-down = More would help, but the collar at { $corner } cannot be turned further down.
against-height = More would help, but the { $axle } axle then leans past its limit of { $limit } side to side.
against-bump = More would help, but the wheel travel to keep free to the bump stop at { $corner } stands against it.
against-droop = More would help, but the wheel travel to keep free to full droop at { $corner } stands against it.
against-other = More would help, but a limit of the car or of a round stands against it.
against-unreachable = Collars alone do not reach every wish here: moving mass would.
against-heights = No limit stands against it, and no height moves by more than { $mm }.
follows-none = No plan: { $why }

## The trade line, footprints and figures

mark-front-even = front even
mark-cross-wanted = cross wanted
mark-rear-even = rear even
line-window = window ± { $window }
line-now = car now
line-band = ± { $u }
line-after = after this plan
line-says = Cross weight, front right and rear left: { $cross } ± { $u }: { $verdict }
print-heavy = { $kg } too heavy
print-light = { $kg } too light
print-right = as wanted
print-scale = Differences are drawn { $times } times larger.
figure-cross-pct = Cross weight, FR + RL
figure-front-diff-kg = Front, left minus right
figure-rear-diff-kg = Rear, left minus right
figure-front-pct = Front share
figure-left-pct = Left share
figure-total-kg = Total
figure-side-front-mm = Front height, left minus right
figure-side-rear-mm = Rear height, left minus right
figure-wanted = { $target } ± { $window }
figure-with-u = { $value } ± { $u }
figure-first = The wish that comes first
figure-side-front = Front height, left minus right
figure-side-rear = Rear height, left minus right
plot-title = Cross weight, front right and rear left
plot-load = Load, { $corner }
plot-found = as found
plot-round = round { $round }

## What gates found

found-unknown = This cannot be judged: { $why }.
found-checks = Found wrong: { $wrong }. Put it right and record the step again, or stop the job.
found-car = Such a car cannot be: { $why }. Look at the car data again.
found-ratio = Motion ratio { $axle } { $value }: written this way the spring would move more than its wheel, which is rare. Was it meant as ‘{ $other }’? If it is right as it stands, choose ‘{ $meant }’.
found-instruments = Not in date, or the date is not written as 2027-03-31: { $wrong }.
found-resolve = With three settles these instruments leave ± { $u } on the cross weight (window ± { $window }) and ± { $axle } on an axle (window ± { $axlewindow }).
found-resolve-settles = { $name }: as planned the reading leaves ± { $planned } and the window is ± { $window }. { $settles } settles would do.
found-resolve-never = { $name }: as planned the reading leaves ± { $planned } and the window is ± { $window }. However often it is read, ± { $best } is left, most of it by { $source }: other instruments, or a wider window.
found-helps = What makes the ±: { $parts }. What would tell: { $helps }.
help-looks = { $looks } looks at each settle
help-settles = { $settles } settles in all
help-level = pads whose twist is known to ± { $twist }
help-window = a window of ± { $window }
source-looks = looks
source-rounding = the display's step
source-friction = settles
source-patches = where the tyres stand
source-zero = the pads' zero
source-calibration = the pads' calibration
source-twist = twist of the pads
source-tilt = tilt of the pads
found-second = { $by } did the step itself. Somebody else signs on and checks.
found-counted = { $off } parts came off and { $on } went back. Find the rest before the car moves.
found-pads = Twist { $twist } (limit for this car { $twistlimit }), side tilt { $tilt } (limit { $tiltlimit }).
found-pressures = More than { $within } from the agreed pressure: { $wrong }. Set and read again.
found-heights = A height is { $worst } from agreed (limit { $within }); side to side { $sides } (limit { $side }). Set the heights first, or give a reason.
found-angles = More than { $within } from agreed: { $wrong }. Change the angles, or give a reason.
found-camber-at = camber { $where } { $has } (agreed { $wants })
found-toe-at = total toe { $where } { $has } (agreed { $wants })
found-one-sided = The wheels of the { $axle } axle differ by { $deg }: before anything is turned, see that the steering is centred, and look for a bent arm or strut and for play on the worse side.
found-pads-moved = Since the pads were levelled one moved against the others by more than { $within }: { $wrong }. Look at its foot, level the pads again, and everything that rests on them is read again.
found-pad-at = { $where } { $mm }
found-rims = Out of true by more than { $most }: { $wrong }. A bent rim is changed before the car is driven or set; put the mark and the gauge on again, and read again.
found-rim-at = { $where } { $mm }
found-angles-agreed = Not inside: { $wrong }.
found-angle-at = { $name } { $value }, wanted { $target } ± { $window }: { $verdict }
found-angles-resolve = These instruments leave ± { $toe } on the toe of a wheel (window ± { $toewindow }), ± { $camber } on its camber (window ± { $window }) and ± { $caster } on its caster (window ± { $casterwindow }).
found-settles = The settles differ by { $spread } at a corner (limit { $within }). Free the tyres, bounce and read again.
found-total = The four loads add up to { $sum }; { $total } was expected. Look at ballast, fuel, units and what touches the car.
found-sides = { $axle }: { $left } left and { $right } right are too unlike. Look at the corners' order and at what touches the car.
found-unlike = This reading does not fit those before it, with only the turns that were entered. { $causes } Look there first, then read again, or let it pass with a reason.
cause-none = No single cause explains it.
cause-pad-zero = The pad at { $where } may show { $size } more than before ({ $chance }): read its zero with nothing on it.
cause-pad-height = The pad at { $where } may stand { $size } higher than before ({ $chance }): look at its shims and feet.
cause-mass-added = Mass may have come or gone, { $size } ({ $chance }): look for tools, doors, a person leaning, fuel.
cause-mass-moved = Mass may have moved on the car, about { $size } ({ $chance }): look at the ballast's straps and at loose kit.
cause-collar = The collar at { $where } may stand { $size } steps from what was entered ({ $chance }): measure it from its fixed point.
cause-link = The { $where } link may hold { $size } ({ $chance }): see that it is off and tied clear.
cause-tyre = The tyre at { $where } may have changed its stiffness by { $size } ({ $chance }): read its pressure.
cause-touching = Something may press on the car near { $where }, { $size } ({ $chance }): look for cables, stands and hands.
cause-off-centre = The tyre at { $where } may stand { $size } from its place before ({ $chance }): look where it stands on its pad.
cause-bump-stop = The { $where } wheel may be on its bump stop, { $size } ({ $chance }): look at the gap.
cause-swapped = Left and right may be swapped in a reading ({ $chance }): compare each pad with its corner.
cause-units = Pounds and kilograms may be mixed ({ $chance }): look at the unit on the display.
found-window = { $name }: { $value } ± { $u }, wanted { $target } ± { $window }: { $verdict }.
found-moved = Something moved: { $wrong }.
found-moved-at = { $where } { $load }, { $height } (settles explain { $u }, { $hu })
found-preload = The { $axle } bar presses the left wheel down with { $force } ± { $u } (minus: the right one). Turn its link until the bolt slides in by hand.
found-preload-turns = The { $axle } bar presses the left wheel down with { $force } ± { $u } (minus: the right one). About { $turns } ± { $uturns } turns of its link take it out (plus presses the left wheel down).
found-no-preload = The { $axle } bar holds { $force } ± { $u }: no preload that can be told.
found-preload-unknown = The preload of the bar cannot be told: { $why }.
found-same = { $now } now, { $then } the first time. It must be the same.
found-wait = { $left } of the wait are left.
found-bump-gap = Too little travel to the bump stop (at least { $kept } is to stay free): { $wrong }. A wheel on its stop reads the stop, not the spring. Look for packers and at the ride height, or have it let pass with a reason.
found-travel = The collar at { $where } would be { $turns } turns from where it began; it has { $least } to { $most }.

## Refusals

refused-stale = The job has moved on since this window was drawn. Nothing was recorded. Look at the step again.
refused-no-job = No job is open. Begin one or take one up.
refused-job-open = A job is open already. Set it aside first.
refused-practice-faults = At most three things can be wrong with a practice car at once. Name or draw fewer.
refused-practice-scenario = There is no such scenario. Choose one of the list.
scenario-unread = { $name } is no scenario: { $why }
scenario-twice = `id` is { $id }, and another scenario is called so
scenario-no-json = no JSON at line { $line }, column { $column }
scenario-no-object = the file is not one object in braces
scenario-unknown = `{ $key }` is no key of a scenario
scenario-missing = `{ $key }` is missing
scenario-value = `{ $key }` is { $is }; it may be { $may }
scenario-length = `{ $key }` is { $is } characters long; it may be 1 to { $most }
scenario-fault-twice = `faults` has { $fault } twice; each may stand there once
scenario-too-many = `faults` and `drawn` together are { $count } things; they may be { $most } at most
scenario-may-format = { $most }
scenario-may-id = 1 to { $most } small letters, digits and hyphens
scenario-may-text = a text in quotation marks
scenario-may-texts = texts by language: `en`, and `de` if there is one
scenario-may-number = a whole number from 0 to { $most }
scenario-may-faults = a list of these names: { $most }
refused-car-name = Give the car a name of up to 60 letters.
refused-name = Write your name.
refused-rank-unknown = Choose trainee, technician or supervisor.
refused-seal-in-review = A job is sealed in the review window, by a supervisor who did not work on it.
refused-review-only = The review window seals a job or sends it back. Everything else is done at the car.
refused-no-sheet = The sheet is written once the job is sealed.
refused-unreadable = This job cannot be read: { $why }. Nothing in it was changed.
refused-no-such-step = There is no step { $step } in this job's procedure.
refused-not-now = { $step } is not the step at hand. The step at hand: { $now }.
refused-not-signed-on = { $by } is not signed on at this job. Sign on first.
refused-already-signed-on = { $by } is signed on already. Choose other initials.
refused-initials = Initials are one to four letters, not “{ $given }”.
refused-rank = { $by } is { $rank }; this needs { $needed } or above.
refused-at-work = { $by } is at work on this step and cannot waive its gate. Ask somebody else.
refused-worked = { $by } worked on this job. It is sealed by a supervisor who did not.
refused-hazard-open = Read and acknowledge the hazard first: { $hazard }.
refused-no-such-hazard = The hazard { $hazard } does not stand at this step.
refused-already-acknowledged = This hazard is acknowledged already: { $hazard }.
refused-missing = { $field } is missing.
refused-not-asked = { $field } is not asked for at this step.
refused-no-such-option = { $field }: “{ $text }” is not one of the answers.
refused-program-fault = A fault of the program: { $what }. Nothing was recorded. Hold the job and report it.
refused-nothing-to-waive = There is nothing to waive at { $step }.
refused-not-waivable = { $step } cannot be waived by anybody.
refused-no-reason = Write the reason. It stands in the record.
refused-not-done = { $step } is not done, so it cannot be opened again.
refused-on-hold = The job is on hold. Go on with it first.
refused-not-on-hold = The job is not on hold.
refused-ended = The job has ended. Nothing more is recorded in it.
refused-stopping = The job is being stopped. Make the car safe.
refused-by-seal-only = This step is ended by the seal, in the review window.
refused-not-ready = Not ready for the seal. To do first: { $step }.

## The bay

bay-no-job = No job is open.
bay-held = The job is on hold.
bay-ended = The job has ended.
bay-raised = CAR RAISED
bay-last-reading = Last reading { $at }

## Times

time-under-a-minute = under a minute
time-minutes = { $minutes } min
time-hours = { $hours } h { $minutes } min

## Reading back

read-apart = { $apart } apart

## Said aloud

said-hazard = { $word }. { $line }.
said-wait = { $label }: { $time }.
heard-asks = { $label }?
heard-nothing = Nothing was heard. Hold the key while you speak.
heard-other-talk = That was not understood. Say it again, or use the keys.
heard-unsure = That could mean two things. Say it again, or use the keys.
heard-loud = It is loud here: speech stands { $db } dB above the noise. Use the keys, or look twice at each number.
heard-hazards = First read the hazards and acknowledge them by hand.
heard-nobody = First say by hand who acts.
heard-ready = All is entered. Say confirm.
heard-taken-back = Taken back.
heard-changes = Say what is to be changed.
heard-undone = The last change is taken back.
heard-nothing-waits = Nothing waits to be confirmed.
heard-unit = That unit does not belong here. Say it again, or use the keys.
heard-english-only = Spoken answers are understood in English only. Use the keys.
said-number = { $label }: { $text }.
missing-voice = Nothing can be said here: { $why }. Everything stands on the screen, and the job goes on without a voice. To be spoken to, install espeak-ng and start the program afresh.
missing-microphone = Spoken answers cannot be heard: { $why }. Keys, touch and pedal do all of it, and the job goes on. To be heard, connect a microphone (on Debian with alsa-utils) and hold the key to talk again.
missing-model = Spoken answers cannot be understood: { $why }. Keys, touch and pedal do all of it, and the job goes on. The package bayhand-voice-en or “cargo xtask voice” brings the voice model; a file elsewhere is named in the settings.
missing-speaker = What is said cannot be heard: { $why }. Everything stands on the screen, and the job goes on without a voice. Connect a loudspeaker, or switch the voice off in the settings.
lack-program = { $what }: not on this computer
lack-device = none answers
lack-file = nothing lies at { $what }

## Settings

board-says = Type on the board is { $mm } high: capitals of 20 minutes of arc at { $distance } m.
board-too-far = At { $distance } m type would take { $share } of the height of this screen, and not all of a step would fit. Hang a larger screen, or nearer.
refused-board-distance = The viewing distance is a number of metres from 0.5 to 30. Nothing was changed.
refused-board-diagonal = The screen's diagonal is a number of inches from 7 to 200. Nothing was changed.
refused-unit-of-other-kind = That unit measures something else. Nothing was changed.
refused-speech-volume = Loudness is a whole number from 0 to 100 %. Nothing was changed.
refused-speech-speed = Speed is a whole number from 80 to 300 words a minute. Nothing was changed.
refused-talk-is-pedal = The pedal sends that key, and it goes on with the step. Learn another key to talk with, or take the pedal away first. Nothing was changed.
refused-speech-voice = That cannot be the name of a voice of this system. Leave it empty for the usual one. Nothing was changed.
refused-language-unknown = There are no words in that language. Nothing was changed.
refused-settings-not-kept = The settings hold until the program ends, but they could not be kept for the next start: { $why }.
refused-nothing-to-choose = There is no place on the trade line to choose at this step.

## The record

row-signed-on = Signed on
row-acknowledged = Acknowledged: { $hazard } ({ $step })
row-by-hand = { $by }, by hand
row-waived = Waived: { $step }
row-reopened = Opened again: { $step }
row-held = Put on hold
row-resumed = Went on
row-stop = Stopped; car to be made safe
row-sealed = Sealed
row-void = Void or done again later.
row-by-voice = By voice: { $fields }.
row-by-voice-one = { $field } “{ $words }”, score { $score }
row-checks = all { $count } checks yes
departures-title = Departed from the procedure: { $count }
departure-waived = Gate waived: { $step }
departure-waived-text = { $said } { $at }, { $by }: “{ $reason }”
departure-reopened = Opened again: { $step }
departure-reopened-text = { $at }, { $by }: “{ $reason }”. Steps made void: { $count }.
departure-tried = Did not pass at once: { $step }
departure-tried-text = { $said } { $at }, { $by }.
departure-stopped = Job stopped
departure-stopped-text = { $at }, { $by }: “{ $reason }”
review-empty = There is no job in this book yet. Jobs appear here when they are begun at the car.
review-summary = Signed on: { $people }. { $from } to { $to }. { $count } entries.
job-working = At work: { $stage }, { $at }
job-held = On hold: { $stage }, { $at }
job-stopping = Being stopped, { $at }
job-stopped = Stopped, { $at }
job-sealed = Sealed, { $at }
job-for-review = Waits for review, { $at }
seal-ready = Everything is done. Read the record, then seal it or send it back.
seal-done = This job is sealed.
seal-stopped = A stopped job is not sealed.
seal-not-ready = Not ready for the seal. At hand: { $step }.
send-back-alone = Only this step would be done again.
send-back-voids = To be done again with it: { $steps }.
verified = The book holds: { $jobs } jobs, { $entries } entries, every hash in order, { $seals } seals. This job: { $here } entries.
compromise = { $first }. “{ $reason }”

## The sheet

sheet-title = Corner balance and alignment
sheet-car = Car
sheet-use = Use
sheet-first = Came first
sheet-ballast = Driver ballast
sheet-fuel = Fuel
sheet-date = Date
sheet-figures = Figures
sheet-figures-note = With ± expanded uncertainty (k = 2) of looks, settles and pad level; the pads' own calibration is not in it. Cross weight on front right and rear left. Read with ballast, working pressures and agreed fuel; as found with links released, as left with links on.
sheet-corners = Corners: load, height
sheet-corners-note = Wanted: height.
sheet-angles = Angles
sheet-angles-note = Camber negative leaning in; toe of one wheel positive pointing in, in front along the line that the rear axle pushes the car along. Thrust { $thrust }. As found: read roughly, before the heights were set.
sheet-pressures = Tyre pressures
sheet-working = working
sheet-cold = cold
sheet-pressures-note = Handed over at the cold pressures.
sheet-found = as found
sheet-left = as left
sheet-wanted = wanted
sheet-turned = Collars: turns, travel
sheet-turns = { $turns }, { $mm }
sheet-compromise = Compromise and reason
sheet-beyond = What the collars could not do, and what would
sheet-beyond-figure = { $name }: { $left }, { $verdict }; wanted { $wanted }.
sheet-beyond-nothing = No limit of the collars stood against more: turning was ended there by decision.
sheet-written = Sheet: { $pdf }. Its figures as numbers: { $csv } and { $json }.
sheet-departures = Departures from the procedure
sheet-cautions = Please note
sheet-people = People
sheet-worked = Worked
sheet-sealed-by = Sealed by
sheet-sealed = { $by }, { $at }
sheet-instruments = Instruments, calibration due
sheet-due = { $id }, due { $due }
sheet-seal = Seal
sheet-head = Record head
sheet-procedure = Procedure
sheet-procedure-by = { $document }; { $program }
instrument-pads = Pads
instrument-laser = Laser
instrument-height-gauge = Height gauge
instrument-pressure-gauge = Pressure gauge
instrument-angle-gauge = Angle gauge
caution-retorque = Have the wheel nuts tightened again to the maker's torque after the distance that the maker gives.
caution-lamps = Lamps and driver-assistance sensors may need a calibration of their own after a change of height or alignment.
caution-maker = The vehicle maker's instructions and local rules come first. Work on safety parts is for trained and authorised people.
remark-names = Names on this sheet are as typed at the car. They are not authenticated yet.
remark-practice = This was a practice job on a simulated car.

## Angles of the wheels

angle-toe = Toe
angle-camber = Camber
angle-caster = Caster
angle-at = { $angle }, { $corner }
angle-toe-more = in
angle-toe-less = out
angle-camber-more = top out
angle-camber-less = top in
angle-caster-more = more
angle-caster-less = less
angle-to-go = { $deg } { $way }
angle-scale = Differences are drawn { $times } times larger.
angle-thrust = Thrust angle { $thrust }; with the steering wheel straight the front wheels point { $steering } off it. Total toe { $front } in front, { $rear } behind.
angle-by-height = Since the rough reading the heights have changed, which is expected to have moved: { $each }.
angle-by-height-at = { $corner } { $mm }: camber { $camber }, toe { $toe }
angle-loads-again = The camber turned at { $corner }, { $deg }, may move up to { $kg } there; settles resolve { $resolved }. Expect other loads in the final reading.
angle-loads-same = The camber turned at { $corner }, { $deg }, moves no more than { $kg } there, which settles cannot resolve ({ $resolved }). Nothing need be read again before the final reading.
adjuster-does = { $told }, { $way } ({ $turns })
adjuster-short = { $turns } turns, { $way }
adjuster-said = { $name }: { $told }, { $way }.
adjuster-still = Leave it as it is. Enter 0.
adjuster-left = { $go } to go, { $left } left after it
adjuster-besides = One turn: { $each }
manual-says = { $id }, version { $version }: every step in the words that the window at the car has, with why it is done so. The instructions of the makers of vehicle, lift and instruments, the local rules, and trained and authorised people come first.
manual-on-demand = Comes when a step needs it.
manual-stopped = Comes when a job is stopped: the way to a safe car.
