# Alignment, the final reading, the state of hand-over, and the seal.

stage-align = Alignment
stage-final = Final reading
stage-review = Review and seal

step-align-plates = Centre the steering on turn and slip plates at pad height.
    .short = Plates and steering centred
    .detail =
        Plates lower or higher than the pads tilt the car and move the loads, so their tops stand in the plane of the pads.
        With the brake on or the wheels chocked, set the steering to its true centre, by its marks or by half the turns from lock to lock, and hold it there.
        Pull the pins only when the car stands still.
        Keep cables and plate pins out of the walkway.

step-align-runout = Measure the run-out of each rim, its mark up and down.
    .short = Rim run-out
    .detail =
        A rim is never quite true, so put a mark on it and read every later angle with that mark up.
        Hang the gauge on the rim and set a stand beside the rim’s front edge; read both with the mark up, turn the wheel half a turn, and read both again.
        Then read the gauge itself on one place of the wheel or the floor, turn it end for end on that place, and read it again.
        The halves of these differences are taken out of every camber, toe and caster.
        The gauge shows plus when the top leans out.

step-align-lines = Set up a line on each side of the car and read the lines’ distances.
    .short = Lines set up
    .detail =
        Strings or lasers at the height of the wheel centres, outside all four wheels, nearly parallel; they need not be quite so, for what they are off is worked out.
        Measure straight across from line to line before the car and behind it, and along one line from the first place to the second.
        The distance on the rim is the one between the two places at its edge that you will read at each wheel.
        Lines that were moved or touched are set up and read again.

step-align-change-rear = Change rear camber and toe as planned.
    .short = Rear angles changed
    .detail =
        The rear comes first, because the front wheels are set to the line that the rear axle drives along.
        Camber before toe: camber moves toe, and the turns that are shown reckon with it.
        Count turns at each side and enter what you made, with plus for more toe-in and for the top leaning out.
        Hold the adjuster’s end when you tighten its nut, and read again after it is tight.

step-align-change-caster = Change front caster as planned.
    .short = Caster changed
    .detail =
        Caster comes before camber and toe, because it moves both.
        Turn the adjusters of both sides as shown, hold each end when its nut is tightened, and enter what you really made.
        Afterwards it is read again by another sweep.

step-align-change-front = Change front camber and toe as planned.
    .short = Front angles changed
    .detail =
        Camber before toe, with the steering held at its centre.
        Turn each tie rod as shown for its side: only so does the steering wheel stand straight afterwards.
        Enter what you made at each side, with plus for more toe-in and for the top leaning out.
        See that enough thread stays in each tie rod and that the boots are not twisted.

step-align-caster = With the brakes held on, read plates and gauge with the steering to each side.
    .short = Caster swept
    .detail =
        Hold the brakes with a pedal prop and the parking brake; a wheel that rolls on its plate while it is steered spoils the reading.
        Marks up, plates at zero with the steering straight; steer left to about the same angle as right, and read plate and gauge at both front wheels each time.
        A plate counts plus towards its own wheel’s side of the car; the angles need not be equal, they are reckoned as read.
        Let each wheel come to rest before you read, and keep your fingers out from between tyre and arch.
        Set the steering straight again afterwards, and take the pedal prop out.

step-align-read = Read the gauge and the distances to the lines at all four wheels.
    .short = Angles read
    .detail =
        Brakes free, car rolled or bounced and at rest, steering straight and held, the mark on every rim up.
        At each wheel read the gauge, then the distances from the line to the rim’s front edge, to its rear edge and to the hub.
        Read all four wheels before anything is changed, and all again after the last change: one toe moves the steering centre and with it the other.

step-align-judge = Choose whether the angles stay or are changed.
    .short = Angles judged
    .detail =
        Each angle stands with its uncertainty against what was agreed; the front wheels’ toe is judged along the line that the rear axle pushes the car along.
        Change what is outside, rear before front, and everything is read again.
        Where one change of the caster is needed, choose it now: it moves camber and toe of its wheel.
        Leaning a wheel also raises or lowers its corner a little, so the loads are read again at the end.

step-final-road-test = Choose whether the car is driven before the final reading.
    .short = Road test chosen
    .detail =
        A short drive lets springs, bushes and joints find their places, and it must come before the last reading, never after it.
        Choose only here; what the car needs before it may leave is asked for step by step, and so is what must be set again afterwards.
        If it is not driven, choose so and write none.

step-final-read-1 = Read loads and heights for the sheet, first settle.
    .short = Final reading, first settle
    .detail =
        This is what the customer gets: ballast in, links on, everything locked, nuts torqued.
        Three looks at each pad, hands off the car, then the heights.
        If you have any doubt about doors, cables or a hand on the car, settle and read again.

step-final-read-2 = Read loads and heights for the sheet, second settle.
    .short = Final reading, second settle
    .detail =
        Freed, bounced, rested, and read as if the first reading did not exist.
        Both settles must agree, and their mean is judged against the windows that were agreed.
        What is outside stays outside on the sheet, with the reason that was given for it.

step-final-read-3 = Read loads and heights as they are handed back, second settle.
    .short = Reading handed back, second settle
    .detail =
        On a car that was measured and not set, the figures are what they are, and no window is asked of them.
        Freed, bounced, rested, and read as if the first reading did not exist; both settles must agree.
        What lies outside what was agreed stands on the sheet beside the advice.

step-final-angles = Read the gauge and the distances to the lines for the sheet.
    .short = Final angles
    .detail =
        The same instruments, the same marks up, the same lines as they stand.
        No wrench goes near the car after this reading: whatever is turned now makes it void.
        If an angle surprises you, read it again before you believe it or change it.

step-final-ballast-out = Take the ballast out of the car.
    .short = Ballast out
    .detail =
        Count the pieces out against what was put in, footwell too.
        Lift each piece close to your body, and mind the seat’s wiring and its airbag.
        The readings stay what they are: this closing change was agreed beforehand.

step-final-cold = When the tyres are cold, set each to its agreed cold pressure.
    .short = Cold pressures set
    .detail =
        Cold means that the car has stood for hours, out of the sun, at the temperature of the day.
        Enter the four figures as the gauge shows them; they go on the sheet.
        Valve caps on.

step-final-dampers = Set each damper back to its noted clicks.
    .short = Dampers set back
    .detail =
        Count in the same direction as you did before, from the same end.
        The four noted figures are on the screen; enter what you set, not what was noted.
        A damper left fully soft feels to the customer like a car that was ruined.

step-final-off-pads = Move the car off the pads onto the floor.
    .short = Car off the pads
    .detail =
        One person steers or pushes beside an open window with the brake in reach, and one looks; nobody stands before or behind the car.
        Roll slowly over the run-offs, stop on level floor, and put the brake on.
        Then carry pads, plates, shims and cables away, so that nobody drives over them or falls.

step-final-level = Read all four pads from two places of the laser, the car on them.
    .short = Pads still level
    .detail =
        Feet sink and floors give under a car, and what the pads showed before holds only while they stand as they did.
        Set the staff on each pad beside its tyre, turn the laser half a turn between the rows, and do not copy the first row into the second.
        Where a pad has sunk, the loads since it did are in doubt: level the pads again, and everything that rests on them is read again.

step-final-clearance = Check the clearances at full lock and at full bump.
    .short = Clearances checked
    .detail =
        Turn the steering from lock to lock and look at tyre, hose, cable and arch at both ends.
        Full bump is judged by the gap you noted and by pressing the car down; use an arm and a lamp, not your head.
        Press the brake pedal: firm and high, before anybody drives.
        Look that the steering wheel stands straight with the wheels straight.

step-final-extinguisher = Take the safety pin out of the extinguisher.
    .short = Extinguisher live again
    .detail =
        A pinned extinguisher is no extinguisher, and the customer will not know.
        Keep clear of the pull while the pin comes out, and look at the gauge.
        Hang the pin where the maker of the system wants it, and take the tag off.

step-final-count = Count the parts and the tools.
    .short = Parts and tools counted
    .detail =
        Every part that came off is back on; a washer left on the bench belongs somewhere.
        Count spanners, sockets, shims, lamps and pedal prop against the trolley: one that is missing is in the car, often on a subframe or under the bonnet.
        The job is not ended while one is missing.

step-final-advice = Tell the customer what must be checked, and when.
    .short = Customer told
    .detail =
        Wheel nuts are checked again after the distance that the maker or local rule names.
        Lamps aim where the car points, and cameras and radar too: after a change of height or alignment they may need their own calibration by the maker’s method.
        Say also what was not reached, before they find it on the sheet.

step-review-seal = When the whole record is in order, seal it.
    .short = Record sealed
    .detail =
        Read the departures first: what was waived, by whom and why, then what was done again.
        Ask whether each figure on the sheet comes from the car as it now stands.
        If something is wrong, send it back with a reason; a seal is your name on somebody else’s work.
        Nobody seals a job that they worked on.

step-align-fasteners = Tighten every alignment fastener to the maker’s torque.
    .short = Alignment fasteners tightened
    .detail =
        Tie-rod lock nuts, camber and caster fasteners, and whatever else was loosened to adjust.
        Hold the tie rod while its lock nut is tightened, so that the toe does not move, and mark each fastener.

step-align-fasteners-second = Check every alignment fastener as the second person.
    .short = Alignment fasteners checked
    .detail =
        Somebody else than the one who tightened them puts the wrench on each one, and looks for the mark.
        It is asked in every job, also where no angle was changed: nobody here knows who had a wrench on them last, and the seal stands for the whole car.
        A forgotten lock nut is as dangerous as a forgotten wheel nut.

step-final-drive = Drive the car on the permitted route.
    .short = Road test
    .detail =
        Only an authorised driver, where local rules allow it, with the ballast out and every nut checked.
        Try the brake at walking speed before you leave the yard, and turn back at the first thing that is not as it should be.
        Afterwards nuts, clearances, fuel, pressures and ballast are brought back and checked again, and the car is read.

step-final-lifting-mode = End the lifting mode by the maker’s procedure.
    .short = Lifting mode ended
    .detail =
        The suspension may move when it wakes up; keep hands out of the arches.
        A car that leaves in its lifting mode can warn, lock its suspension or stand at a wrong height.

step-final-high-voltage = Have the high voltage put back in service.
    .short = High voltage back
    .detail =
        Only people trained for it, by the maker’s procedure.
        Look for warnings in the instruments before the car is handed over.
