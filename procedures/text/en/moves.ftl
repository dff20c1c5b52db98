# What comes up whenever it is needed: going up, wheels, coming down, settling, putting back; and making safe.

stage-raise = Going up
stage-wheels = Wheels
stage-lower = Coming down
stage-settle = Settling
stage-restore = As before
stage-stop = Making safe

step-raise-check = Check that nobody is aboard and nothing can slide.
    .short = Clear to go up
    .detail =
        Look into the car and say aloud that it is empty; a child or a customer has sat there before.
        Pull at the ballast: strapped means that it does not move.
        Doors, bonnet and boot are shut, the brake is on or the wheels are chocked, and everybody near knows that the car goes up.
        You do this at every raise, because every raise is a new one.

step-raise-clear = Raise the car until the wheels just clear.
    .short = Wheels just clear
    .detail =
        Stop as soon as a sheet of card slides under all four tyres.
        Look at each lifting point while it takes the load: flat, centred, nothing pinched.
        If one wheel comes off much later than the others, the car hangs askew: lower it and set the points again.
        Everybody stands back while it moves.

step-raise-rock = Rock the car firmly by hand.
    .short = Car rocked
    .detail =
        Push at a corner, along and across, from beside the car, with your feet where they would be safe if it came down.
        It should move on its points as one piece and come back; it must not slip, creak or turn on a pad.
        Better that it falls from a hand’s breadth than from above your head.
        If it slips, lower it and begin again.

step-raise-lock = Set the car on its locks or stands at working height.
    .short = Car on locks
    .detail =
        Raise it without stopping, listen for the locks on both sides, then lower until they carry the load.
        With a jack, put rated stands under the maker’s points at the same height on both sides, and let the jack down until they carry: stands before hands.
        Look that every lock or stand carries, from outside, before the first hand goes beneath.
        For a reading the height must be the same each time.

step-wheels-off = Take the wheels off the corners that you work on.
    .short = Wheels off
    .detail =
        Mark each wheel and its place, so that it goes back where it was.
        Think of the balance: work at one axle, then the other, and never pull hard at a nut with the car in the air; nuts are cracked on the ground or with little force.
        Lay the wheels flat, out of the walkway and not beneath the car.
        Lift with a second person or a trolley.

step-wheels-on = Put each wheel back on its hub.
    .short = Wheels on hubs
    .detail =
        Hub and wheel faces are clean and dry; a flake of rust loosens a wheel later.
        Start every nut by hand, several turns, so that no thread is crossed.
        Each wheel goes to its marked place.

step-wheels-nuts = Seat the wheel nuts in pattern.
    .short = Wheel nuts seated
    .detail =
        Go in a star, little by little, so that the wheel is drawn flat to the hub.
        Hold the wheel while you do it, and spin it: it must run true.
        Seated is not torqued: the maker’s torque comes with the car on its wheels, with a second person, before the car is driven.

step-wheels-springs = Check that each spring is captive in its seats.
    .short = Springs seated
    .detail =
        Look at the top and the bottom seat of every spring, with a lamp, all the way round.
        The end of the wire stands at its stop, and a helper spring is not cocked.
        A spring that sits on the lip of its seat jumps in when the load comes, with a bang, and moves everything that you set.
        Keep fingers out from between coil and seat.

step-lower-zeros = When nothing touches the pads, read their zeros.
    .short = Zeros read again
    .detail =
        Look at all four before the car comes down: each must show nought within its resolution.
        One that does not has been knocked, has a stone or a cable on it, or has drifted; find out which, then zero it.
        A zero that moved means that the loads since the last good zero are in doubt, so write it down.

step-lower-people = Count everybody out from under the car.
    .short = People counted out
    .detail =
        Say each name and see each face; a pair of shoes behind the far wheel has been missed before.
        Then walk round once: tools, lamps, drain pans, cables and stands out from under car and lift arms.
        From now on nobody goes back in.

step-lower-pads = When each tyre is over its pad, lower the car slowly.
    .short = Down on the pads
    .detail =
        Take it off its locks, look at both sides, and lower with your eye on the tyres.
        Stop a hand’s breadth above the pads and check that each tyre will land in the middle.
        If one lands off its middle, raise and shift the pad, never the pad under load.
        Stop at once when anything catches or tilts.

step-lower-ground = When the floor is clear, lower the car to the ground.
    .short = Down on the ground
    .detail =
        Walk round once more: nothing and nobody where the tyres and the arms come down.
        Take it off its locks, look at both sides, and lower slowly with your eye on it.
        Put the brake on or chock it before you swing the arms away.

step-settle-brake-on = Put the parking brake on.
    .short = Brake on
    .detail =
        Try by hand that it holds; a brake that was just worked on may not.
        Nobody reaches under a car that stands on its wheels before the brake or the chocks hold it.
        A reading cannot be taken while the brake is on, so the tool asks for it to be released again.

step-settle-chocks-on = Set chocks before and behind the wheels.
    .short = Chocks set
    .detail =
        Both ways, at the wheels of one axle at least, and of an axle that stays on its wheels.
        Push them home by foot, with your hand out of the gap.
        They come away again before any reading, because a chock that touches a tyre carries load.

step-settle-chocks-away = Take the chocks away.
    .short = Chocks away
    .detail =
        Make sure that the car does not lean on a chock: one that is hard to pull is holding the car.
        Pull them out sideways, from beside the car.
        Lay them within reach and clear of the tyres.

step-settle-brake-off = With a person beside the car, release the brake and select neutral.
    .short = Brake off, in neutral
    .detail =
        Tyres that are held by the brake cannot roll as the suspension moves, and the car hangs on them.
        On pads and plates the car is free now: one person stays beside it, nobody before or behind.
        An electric brake may put itself on again when a door opens or the ignition goes off; use the maker’s service mode and listen for it.

step-settle-steering = Set the steering straight ahead.
    .short = Steering straight
    .detail =
        With caster in the steering, a turned wheel lifts one front corner and lowers the other, and the loads follow.
        Reach in through the window, and do not lean on the sill.
        The car must be settled again after it.

step-settle-plates = Free the slip plates under all four tyres.
    .short = Slip plates free
    .detail =
        Pull the pins, and see that each plate floats a few millimetres in every direction.
        A plate that stands against its edge holds the tyre as surely as glue.
        Pins go to the tray, not on the floor, and nobody stands before or behind the car.

step-settle-roll = Roll the car off the pads and back on, by one tyre turn or more.
    .short = Rolled off and on
    .detail =
        Only a tyre that rolls lets go of the sideways grip that holds the car up.
        Push at a wheel or a strong point, slowly, with one person beside the car ready to stop it.
        The run-offs are level with the pads, and each tyre comes back to the middle.
        Do not brake to stop it: let it roll out, or the grip is back.

step-settle-bounce = Bounce each end of the car by hand.
    .short = Both ends bounced
    .detail =
        Press three or four times over the middle of the axle, so that both sides move alike, and let the last one die out by itself.
        Press on a strong part of the body, not on a panel, a wing or a lamp.
        This works the friction of joints and dampers towards the middle.
        Do not steady the car with your hand afterwards.

step-settle-wait = Wait until the timer has run out.
    .short = Car at rest
    .detail =
        Rubber creeps for a while after the car has moved, and the pads see it.
        Step off the pads, let nobody walk past closely, and shut the bay door if there is a draught.
        The figures should stand still before you read.

step-settle-touch = Check that only the tyres touch the car.
    .short = Only tyres touch
    .detail =
        Walk round: lift arms and jack away, chocks and hoses away, no cable pulled tight, no door ajar, no gauge hung on a wheel, nobody in the car and no hand on the wing.
        A trolley that leans on a bumper has cost many an hour.
        Whatever touches the car carries a share of it.

step-restore-ballast = Strap the driver’s ballast back in.
    .short = Ballast back in
    .detail =
        The same mass, in the same places, seat and footwell, as it was recorded the first time.
        Strap each piece and pull hard at it.
        Ballast a hand’s breadth further out is seen on the pads.

step-restore-pressures = Set each tyre back to its agreed working pressure.
    .short = Working pressures again
    .detail =
        The same gauge as before, and the figure come to from the same side.
        After a drive the tyres are warm, so wait until all four have come to one temperature.
        Caps on.

step-restore-onto-pads = Roll the car onto the pads.
    .short = Back on the pads
    .detail =
        Look first: pads, plates and run-offs in their places, cables out of the way of the tyres, plates pinned.
        One person pushes and steers beside the car with the brake in reach, one looks, and nobody stands before or behind it.
        Stop with each tyre in the middle of its pad, then put the brake on and see that it holds.

step-stop-people = Count everybody out from under and inside the car.
    .short = People counted out
    .detail =
        Stopping is the moment when people hurry, so begin with people.
        Say each name and see each face.
        Nobody goes back in or under to fetch something.

step-stop-car = Leave the car down on its wheels, or secured on its locks.
    .short = Car secured
    .detail =
        Down on its wheels is best, with the brake on or chocks both ways.
        The tool knows how it stands: a car that is just clear of the ground is brought down first.
        If a wheel is off, or a spring is not in its seats, it stays up on engaged locks or rated stands, and the lift is switched off and locked.
        Never leave a car on a jack, and never leave it just clear of the ground.

step-stop-loose = Write down everything that is loose on this car.
    .short = Loose parts written down
    .detail =
        Whoever comes next knows nothing: write links, collars, nuts, wheels, pressures, ballast and where each part lies.
        Tie a released link up, so that it can strike nothing if the car is moved.
        Take ballast out or strap it; see that wheels that are on have every nut seated.

step-stop-tag = Hang a do-not-drive tag on the steering wheel.
    .short = Car tagged
    .detail =
        A tag on the wheel and the key with the person in charge: a car that looks finished is driven away.
        The tag says what is loose, who stopped the job, and whom to ask.
        This ends the job as stopped; the record keeps everything up to here.

step-raise-abort-ground = Lower the car back onto the ground.
    .short = Lowered again onto the ground
    .detail =
        A car that is not steady at wheels-clear is not taken higher.
        Lower it slowly, look at every lifting point, and begin the raise anew with its own acknowledgement.

step-raise-abort-pads = Lower the car back onto the pads.
    .short = Lowered again onto the pads
    .detail =
        A car that is not steady at wheels-clear is not taken higher.
        Lower it slowly onto the pads, look at every lifting point, and begin the raise anew with its own acknowledgement.

step-wheels-crack = Crack each wheel nut loose by a quarter turn.
    .short = Nuts cracked
    .detail =
        Do it while the car stands on its wheels: pulling hard at a nut on a raised car can pull the car off its supports.
        A quarter turn is enough; the nuts stay on until the wheel is clear of the ground.

step-settle-brake-on-electric = Switch the electric parking brake on.
    .short = Electric brake on
    .detail =
        Some of these brakes close by themselves when the ignition goes off, and open when a door is shut.
        Follow the maker’s instructions and try by hand that the car is held.

step-settle-brake-off-electric = Switch the electric parking brake off.
    .short = Electric brake off
    .detail =
        The reading needs wheels that can turn.
        Keep the brake from closing by itself, by the maker’s service mode where there is one, and do not leave the car alone.

step-restore-fuel = Bring the fuel back to the agreed level.
    .short = Fuel restored
    .detail =
        The drive used some; a reading is true only of the agreed level.
        Fill up or drain to the level that was recorded, with the cautions that belong to fuel.

step-restore-off-pads = Roll the car off the pads onto the floor.
    .short = Car off the pads
    .detail =
        Two people, one at each side, and somebody ready with a chock.
        Put the brake on when it stands; the pads stay where they are and keep their level.
