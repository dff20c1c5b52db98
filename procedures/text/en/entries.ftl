# What is entered: labels of inputs, statements of checks (each can be true or not), options of choices.
# input-STEP-INPUT is looked for first, then input-INPUT.

## Intake: the car

input-use = What the car is used for
option-road = Road
option-fast-road = Road, driven fast
option-track = Track

input-driver-side = The driver sits on the
option-left = Left
option-right = Right

input-wheelbase = Wheelbase
input-track = Track
input-total = Total on the pads, driver’s ballast included
input-cg-height = Height of the mass centre
input-roll-axis-height = Height of the roll axis at the mass centre

input-drive = Driven wheels
option-front-drive = Front
option-rear-drive = Rear
option-all-drive = All four

input-springing = Springing
option-each-wheel = Collar or adjustable strut at each wheel
option-not-adjustable = Not adjustable: measure and advise
option-single-spring = One spring for two wheels: measure and advise
option-interconnected = Interconnected: measure and advise
option-active = Active: measure and advise

input-high-voltage = High voltage aboard
option-no-high-voltage = None
option-has-high-voltage = High voltage aboard

input-parking-brake = Parking brake
option-mechanical-brake = Mechanical
option-electric-brake = Electric

input-extinguisher = Plumbed-in extinguisher
option-no-extinguisher = None
option-plumbed-extinguisher = Plumbed in

input-lifting-mode = Lifting mode of the suspension
option-no-lifting-mode = The car has none and needs none
option-has-lifting-mode = The car has one

input-bar-front = Front anti-roll bar
option-front-none = No bar
option-front-fixed = Bar with fixed links
option-front-adjustable = Bar with an adjustable link
input-front-bar-rate = Rate of the front bar at the wheels (0: not known)
input-front-link-lead = Front link: change at the wheel for one turn (0: not known)

input-bar-rear = Rear anti-roll bar
option-rear-none = No bar
option-rear-fixed = Bar with fixed links
option-rear-adjustable = Bar with an adjustable link
input-rear-bar-rate = Rate of the rear bar at the wheels (0: not known)
input-rear-link-lead = Rear link: change at the wheel for one turn (0: not known)

input-ratio-way = Known of the springs
option-ratio-spring-per-wheel = Rate, ratio spring / wheel
option-ratio-wheel-per-spring = Rate, ratio wheel / spring
option-ratio-above-one = Rate, spring / wheel over 1.2
option-rate-known = Rate only
option-springs-unknown = Nothing

input-sprung-like = Sprung like
option-like-road = A road car
option-like-fast-road = A fast road or rally car
option-like-track = A track car
option-like-downforce = A car with high downforce
option-like-any = Nobody can say

input-spring = Spring rate

input-motion-ratio = Motion ratio
input-tyre = Tyre rate
input-unsprung = Unsprung mass of one corner
input-tyre-radius = Radius of the unloaded tyre

input-pitch = Pitch: collar travel in one turn
input-steps-per-turn = Steps in one turn
input-hand = Hand of the thread
option-right-hand = Right-hand
option-left-hand = Left-hand
input-spring-seat = Where the spring sits
option-spring-above = Above the collar
option-spring-below = Below the collar
input-turns-up = Turns left that raise the car
input-turns-down = Turns left that lower the car
input-fixed-point = Fixed point that collar positions are measured from
input-turn-under-load = Turning under load
option-never-under-load = Never under load
option-maker-allows-load = The adjuster’s maker allows it in writing
input-reach = How the collars are reached
option-reach-wheels-on = With the wheels on
option-reach-wheels-off = With the wheels off

## Intake: what was agreed

input-cold = Agreed pressure, cold
input-working = Agreed pressure, working
input-points = Where the heights are measured
input-agreed-height = Agreed ride height
input-front-axle = Front wheels
option-front-independent = Independent
option-front-beam = On a beam axle
input-front-spring-base = Distance between the front springs, across the car
input-rear-axle = Rear wheels
option-rear-independent = Independent
option-rear-beam = On a beam axle
input-rear-spring-base = Distance between the rear springs, across the car
input-stops = Wheel travel at the agreed height
option-stops-unknown = Not known
option-stops-known = Known
input-bump-travel = Wheel travel to the bump stop
input-droop-travel = Wheel travel to full droop
input-travel-kept = Least travel to keep free, both ways
input-body = Torsional stiffness of the body
option-body-stiff = Not known, taken as stiff
option-body-twists = Known
input-torsion = Body, front axle against rear axle
input-agreed-camber = Agreed camber
input-agreed-toe = Agreed toe of one wheel, half the axle’s total
input-agreed-caster = Agreed caster
input-angle-window = Window of camber, plus or minus
input-caster-window = Window of caster, plus or minus
input-toe-window = Window of one wheel’s toe, plus or minus
input-toe-per-turn = One turn: toe of its wheel
input-toe-steps = Toe: steps of one turn
input-camber-per-turn = One turn: camber
input-camber-steps = Camber: steps of one turn
input-caster-per-turn = One turn of the caster adjuster
input-caster-steps = Caster: steps of one turn
input-inclination = Inclination of the steering axis
input-bump-camber = Camber for one mm into bump
input-bump-toe = Toe for one mm into bump
input-bump = Bump curve
option-bump-unknown = Not known
option-bump-known = Known
option-bump-measured = Measured
input-bump-travelled = Wheel travel into bump
input-bump-camber-change = Camber it changed by
input-bump-toe-change = Toe it changed by
input-couplings = What the adjusters move besides
option-couplings-unknown = Not known
option-couplings-known = Known
input-camber-moves-toe = One turn of camber: toe
input-caster-moves-camber = One turn of caster: camber
input-caster-moves-toe = One turn of caster: toe
input-cross-target = Wanted cross weight, front right and rear left
input-cross-window = Window of the cross weight, plus or minus
input-axle-window = Window of left minus right on an axle, plus or minus
input-height-window = Window of the heights, plus or minus
input-side-limit = Most height difference side to side
input-first = Which wish comes first
option-cross-first = Cross weight: the same feel left and right
option-front-first = Front axle even: braking
option-rear-first = Rear axle even: traction off the line
input-driver = Driver’s mass, in driving kit
input-fuel-level = Agreed fuel level
input-fluids = Agreed level of the other fluids

## Intake: the bay and the instruments

input-lift = How the car is raised
option-four-post = Four-post lift
option-two-post = Two-post lift
option-stands = Jack and stands
input-freeing = How the tyres are freed
option-slip-plates = Slip plates
option-run-offs = Rolling over level run-offs
input-wait = Wait after each settle
input-checker = Who checks
input-pads-id = Pads
input-pads-due = Pads, calibration due
input-pads-resolution = Pads, resolution
input-pads-zero = Pads, zero kept over the job, ±
input-pads-calibration = Pads, calibration, ± of the load
input-laser-id = Laser
input-laser-due = Laser, calibration due
input-laser-accuracy = Laser, accuracy over the pads
input-height-gauge-id = Height gauge
input-height-gauge-due = Height gauge, calibration due
input-pressure-gauge-id = Pressure gauge
input-pressure-gauge-due = Pressure gauge, calibration due
input-angle-gauge-id = Angle gauge
input-angle-gauge-due = Angle gauge, calibration due
input-gauge-accuracy = Accuracy of the gauge
input-plate-accuracy = Accuracy of a turn plate
input-plate-scale = Accuracy of a turn plate’s scale
input-line-accuracy = Accuracy of a distance to a line
input-across-accuracy = Accuracy of a distance across the car

## Walk-round and first lift

input-tyres-match = Tyres match what was agreed
input-tyres-sound = Tyres are sound
input-no-leaks = Nothing leaks
input-no-fuel-smell = There is no smell of fuel
input-no-loose-parts = No part hangs loose
input-extinguisher-pinned = The safety pin is in, and its tag hangs
input-maker-high-voltage = The maker’s procedure has been followed to its end
input-trained-high-voltage = The person who did it is trained and authorised for it
input-lifting-mode-set = The lifting mode is set, and the car shows it
input-points-found = Every lifting point was found and is sound
input-points-source = Where in the maker’s data
input-lift-in-service = Lift, or jack and stands, are inspected and in date
input-lift-rated = The rated load exceeds the car with fuel and ballast
input-arms-at-points = Arms or stands are placed for the maker’s points
input-locks-engaged = Every lock or stand carries the load
input-points-seated = Every point sits flat and centred, nothing pinched

## Walk-round raised

input-bearings-sound = Wheel bearings run smooth and without play
input-joints-sound = Joints have no play
input-bushes-sound = Bushes are whole
input-dampers-dry = Dampers are dry
input-springs-in-seats = Each spring sits in its seats
input-clicks = Damper clicks as found, from fully hard
input-collars-free = Every collar turns freely
input-threads-clean = The threads are clean
input-rings-loosened = Every locking ring is loose
input-bars-sound = Bars and links are sound
input-links-move = Joints and lock nuts of the links move freely

## Pads

input-pads-at-wheels = Each pad is under the middle of its wheel
input-pads-steady = Each pad stands on all its feet
input-plates-equal = Slip plates, if used, are equally thick
input-survey = Height of the pad, higher is larger
input-shims = Thickness of the shims under the pad
input-set-up-1 = Height of the pad, first place of the laser
input-set-up-2 = Height of the pad, second place of the laser
input-pads-warm = The pads are warm
input-zeros-read = Each pad shows a steady zero with nothing on it

## Links

input-wheels-equal = Both wheels of the axle hang at equal height
input-front-link-undone = One end of one front link is undone
input-rear-link-undone = One end of one rear link is undone
input-link-tied = The link is tied clear, and the bar hangs free
input-parts = Parts taken off
input-parts-place = Where the parts lie
input-back-front-parts = Parts put back
input-back-rear-parts = Parts put back
input-link-turns = Turns made at the link, plus presses the left wheel down
input-front-bolt-by-hand = The front link’s bolt slides in by hand
input-rear-bolt-by-hand = The rear link’s bolt slides in by hand
input-link-nut-tight = Link nut and lock nuts are at the maker’s torque

## Car as used

input-fuel-agreed = Fuel is at the agreed level
input-fluids-agreed = The other fluids are at their agreed levels
input-kit-out = Loose kit is out
input-ballast = Ballast, all of it
input-footwell = Of it in the footwell
input-ballast-strapped = Every piece is strapped and does not move
input-pressures = Tyre pressure
input-doors-shut = Doors, bonnet and boot are shut
input-steering-straight = The steering is straight
input-pedal-firm = The brake pedal is pumped firm

## Readings and turns

input-loads = Load
input-heights = Ride height
input-camber = Camber, negative when the top leans in
input-toe = Toe, positive when the front points in
input-turns = Turns made, plus raises the car

input-rough-heights-next = Are the heights near enough
option-heights-near = Near enough, go on
option-set-heights = Set the heights first

input-tyres-centred = Each tyre is within thirty millimetres of its pad’s middle
input-brake-free = Brake off, out of gear, chocks clear

input-next = What to do next
option-go-on = Go on: lock off
option-turn-cross = Turn, for the cross weight
option-turn-front = Turn, for an even front axle
option-turn-rear = Turn, for an even rear axle
option-turn-place = Turn, for a place on the line
input-place = Cross weight aimed at, FR + RL
input-reason = Why
input-advice = Advice for this car

## Lock off

input-rings-tight = Every locking ring is tight, and no collar moved
input-springs-captive = Each spring is captive in its seats at full droop
input-thread-engaged = At least the maker’s thread is engaged at each collar
input-bump-gap = Gap to the bump stop
input-bushes-set = Bushes are tightened at ride height to the maker’s torque
input-nuts-pattern = Every nut was tightened in pattern
input-nuts-torque = Maker’s torque, as set on the wrench
input-nuts-checked = I checked every nut of every wheel myself

## Links back

input-back-front-read-next = How the front link stands
input-back-rear-read-next = How the rear link stands
option-link-right = Right: no load in it
option-link-again = Adjust the link again
input-preload-note = What the fixed links show

## Alignment

input-plates-level = Turn and slip plates stand at pad height
input-steering-centred = The steering is centred and held
input-gauge-direct = The gauge on one place
input-gauge-turned = The gauge turned end for end there
input-runout-camber-up = Gauge, mark up
input-runout-camber-down = Gauge, mark down
input-runout-edge-up = To front edge, mark up
input-runout-edge-down = To front edge, mark down
input-rim-between = Between the places on the rim
input-lines-front = Across from line to line, before the car
input-lines-rear = Across from line to line, behind the car
input-lines-apart = Along a line, from one to the other
input-toe-turns = Turns made at the toe adjuster, plus gives toe-in
input-camber-turns = Turns made at the camber adjuster, plus leans the top out
input-caster-turns = Turns made at the caster adjuster, plus gives more caster
input-sweep-left-plate = Steered left: plate
input-sweep-left-gauge = Steered left: gauge
input-sweep-right-plate = Steered right: plate
input-sweep-right-gauge = Steered right: gauge
input-align-read-camber = Gauge, plus with the top out
input-final-angles-camber = Gauge, plus with the top out
input-edge-front = Line to front edge
input-edge-rear = Line to rear edge
input-hub = Line to hub
input-align-judge-next = How the angles stand
option-angles-good = Good, go on
option-change-angles = Change camber and toe
option-change-caster = Change caster too

## Final reading and hand-over state

input-road-test = Road test
option-not-driven = Not driven
option-driven = Driven, by an authorised person
input-road-test-note = Who drove and what was noticed, or none
input-ballast-out = All ballast is out, counted against what went in
input-final-cold-pressures = Tyre pressure, cold
input-final-dampers-clicks = Damper clicks as set back, from fully hard
input-clicks-back = All dampers are back at their noted clicks
input-car-off-pads = The car stands on level floor with the brake on
input-pads-away = Pads, plates and cables are put away
input-lock-clear = Nothing touches at full lock
input-bump-clear = Nothing touches at full bump
input-brake-pedal-firm = The brake pedal is firm
input-hoses-clipped = Hoses and leads are clipped
input-wheel-straight = The steering wheel stands straight
input-extinguisher-live = The safety pin is out, and its gauge is in the green field
input-parts-counted = Every part that came off is on the car
input-tools-counted = Every tool is back in its place
input-retorque-told = The customer knows when the nuts are checked again
input-lamps-told = The customer knows about lamps, cameras and radar

## Going up, wheels, coming down

input-nobody-aboard = Nobody is in the car
input-load-secured = Ballast is strapped or out, and nothing can slide
input-wheels-clear = All wheels just clear, each point flat and centred
input-wheels-off-stored = The wheels are marked and lie flat, out of the way
input-wheels-on-hubs = Each wheel is on its hub, every nut started by hand
input-nuts-seated = Every nut is seated in pattern
input-people-out = Everybody is out from under the car, counted by name
input-tools-out = Tools, lamps and stands are out
input-tyres-over-pads = Each tyre is over the middle of its pad
input-floor-clear = The floor under tyres and arms is clear

## Settling and putting back

input-brake-holds = The brake is on and holds
input-chocks-both-ways = Chocks stand tight both ways
input-chocks-away = All chocks are away
input-brake-off = The brake is off
input-in-neutral = The car is in neutral
input-plates-free = Every slip plate floats free
input-rolled-off-on = The car was rolled by one tyre turn or more
input-bounced-both-ends = Both ends were bounced
input-only-tyres-touch = Only the tyres touch the car

## Making safe

input-car-secured = Brake or chocks hold it, or the locks carry it
input-stop-car-springs-in-seats = Each spring sits in its seats, or its corner stays off the ground
input-loose-parts = What is loose, and where it lies
input-links-tied = Released links are tied clear, or none is
input-ballast-safe = Ballast is out or strapped
input-wheels-safe = Wheels are on with nuts seated, or lie safe beside the car
input-tag-on-wheel = The tag hangs on the steering wheel
input-stop-note = What the tag says

## Raising and lowering, wheels, links: added checks

input-rock = The car, rocked by hand, is
option-steady = Steady: it may go on up
option-not-steady = Not steady: it comes down again
input-area-clear = Nobody and nothing is near or under the car
input-nuts-cracked = Every nut is cracked loose by a quarter turn, no more
input-bushes-slack = Clamped rubber bushes are slackened, or there are none
input-pads-still-level = The pads are still level with the car on them

## Rough angles

input-rough-angles-next = Are the angles near enough
option-angles-near = Near enough
option-set-angles = Set the angles first

## Fasteners, the drive, back to the road

input-fasteners-tight = Tie-rod lock nuts, camber and caster fasteners are at the maker’s torque
input-fasteners-torque = Torques used
input-fasteners-checked = Every fastener that was touched was checked again
input-drive-allowed = An authorised driver, a permitted route and a fit car
input-drive-done = The drive is done and nothing was found
input-lifting-mode-ended = The lifting mode is ended and the car stands at its normal height
input-high-voltage-back = High voltage is back in service by the maker’s procedure
