# From the walk-round to the car as it is used.

stage-walk = Walk-round
stage-lift = First lift
stage-raised = Raised look
stage-pads = Pads
stage-links = Links released
stage-used = Car as used

step-walk-tyres = Check the tyres against what was agreed.
    .short = Tyres checked
    .detail =
        Read size and date on all four sidewalls; odd tyres have odd radii and odd stiffness, and the pads then show the tyre and not the spring.
        Look and feel for cuts, bulges, cords and nails, on the inner shoulder too.
        Uneven wear is a message from the old alignment: write it down.
        A tyre that is not sound by its maker’s limits or the law stops the job.

step-walk-leaks = Look for leaks, fuel smell and loose parts.
    .short = Leaks and loose parts
    .detail =
        Look at the floor under the car first, then under the bonnet and round each brake.
        If you smell fuel, stop: no lamp, no switch, no lift until its source is found and the air is clear.
        Keep clear of the exhaust and the brake discs; a car that was driven in stays hot for an hour.
        A panel or undertray that hangs loose is made fast now, because it will fall on the person below it.

step-walk-extinguisher = Fit the safety pin to the plumbed-in extinguisher.
    .short = Extinguisher pinned
    .detail =
        Find the bottle, its pull and any outside pull before you lean into the car.
        Fit the pin or the safety switch that the maker of the system provides, and hang a tag where the driver will see it.
        A system that goes off fills the cabin with powder or gas at once, and you may be in the seat.
        The pin comes out again at the end, and the tool asks for it.

step-walk-high-voltage = Make the high-voltage system safe by the maker’s procedure.
    .short = High voltage made safe
    .detail =
        Only a person trained and authorised for high voltage does this, with the maker’s procedure in hand.
        Follow it to its end: switched off, locked against switching on, waited, shown to be dead.
        Where the maker says that this work may be done without it, write so in the record of the job.
        An orange cable near a collar, a link or a lifting point stays out of reach of tools in any case.

step-walk-lifting-mode = Set the lifting mode of the suspension.
    .short = Lifting mode set
    .detail =
        Self-levelling, air and hydraulic suspension moves by itself when it sees the wheels hang, when a door opens or when the car cools.
        Set the mode by the maker’s procedure and see that the display or the lamp agrees.
        Keep hands out of the arches while you do it, and find out what ends the mode: often it is the first metre of driving.

step-walk-lifting-points = Find the lifting points in the maker’s data.
    .short = Lifting points found
    .detail =
        Look them up; a sill that looks strong may be a cover.
        Go to each point with a lamp and see that it is there, dry, not rusted through and not repaired.
        Where floor, battery or undertray hide it, the maker says which adapter is used.
        Write where you found the points, so that the next person does not have to guess.

step-lift-equipment = Prepare the lift at the maker’s points.
    .short = Lift prepared
    .detail =
        Read the plate: it must be inspected and in date, and its load must exceed the car with fuel and ballast.
        Set arms or stands exactly at the points, with the adapters that the maker names.
        On two posts the mass centre belongs between the columns, so think where engine, battery and ballast sit.
        With a jack, chock the wheels both ways and have the stands in reach: stands before hands.

step-lift-look = When the car is on its locks, look at every lifting point.
    .short = Points looked at
    .detail =
        Look from outside first, all the way round, before you go beneath.
        Each point must sit in the middle of its rubber, flat, with nothing bent and nothing pinched: no pipe, no cable, no seam.
        A car that is about to move gives small signs: a pad that has turned, fresh metal, a creak.
        If anything looks wrong, lower it and set it again.

step-raised-play = Check bearings, joints and bushes for play.
    .short = Play in joints
    .detail =
        Hold each wheel top and bottom, then left and right, and rock it sharply; then lever gently at each joint and bush.
        Play lets the wheel stand somewhere else each time, so no setting will stay and no reading will repeat.
        Feel for roughness when you spin the wheels that the brake leaves free.
        Judge wear by the maker’s limits; a worn safety part is changed before the car is set.

step-raised-dampers = Check the dampers and springs, corner by corner.
    .short = Dampers and springs
    .detail =
        A damper that weeps is worn, and one that has gas pressure lifts its corner a little; both belong in the record.
        See that each spring sits square, its end against its stop.
        For the clicks, count from fully hard as the maker says, write number and direction, and set it back to where it was.
        Where a damper has no clicks, write none.

step-raised-collars = Loosen the locking ring of each collar.
    .short = Locking rings loosened
    .detail =
        Brush and wipe the thread first; one grain of grit can weld an aluminium collar to its tube.
        Hold the collar with one spanner while you loosen the ring with the other, so that the collar stays where it was found.
        Try that the collar turns freely with its own spanner; never use a hammer and never force a dry thread.
        At full droop the spring must still be captive between its seats.

step-raised-bars = Check the anti-roll bars and their links.
    .short = Bars and links
    .detail =
        Look for cracks at the bends, for worn bushes and for links that are bent.
        Turn each link by hand: a ball joint that has seized holds tension whatever its length.
        See that threads and lock nuts are free, so that the link can be adjusted later.

step-pads-place = Place a pad under the middle of each wheel.
    .short = Pads placed
    .detail =
        Set the pads out at wheelbase and track, so that each tyre comes down within thirty millimetres of the middle.
        Slide them in from the side and keep your head and body out from under the car.
        Each pad must stand on all its feet and not rock; if slip plates are used, put plates of the same thickness on all four.
        Lead the cables round the outside, out of the walkway and out of the way of the tyres.

step-pads-survey = Read the height of each pad with the laser.
    .short = Pads surveyed
    .detail =
        Set the laser up where it sees all four pads, and let it warm and settle.
        Read at the middle of each pad with the same staff, held upright, and enter heights so that a higher pad is the larger number.
        Keep the beam below or above everybody’s eyes and off shiny metal.
        These four heights say how thick the shims must be.

step-pads-shims = Shim each pad as the survey asks.
    .short = Pads shimmed
    .detail =
        Only the twist of the four pads moves load across the car; a plane that leans a little hardly matters.
        One millimetre of twist at one pad is worth more than a kilogram a corner on a stiff small car.
        Put firm, flat shims under every foot of a pad, and enter the thickness that you really used.
        A pad that rocks after shimming is worse than one that is low.

step-pads-level = Read all four pads from two places of the laser.
    .short = Pads levelled
    .detail =
        Turn the laser half a turn, or stand it at the opposite end, and read all four again.
        A laser that leans, leans the other way in the second set-up, so the average of both is free of it.
        Do not copy the first row into the second: the difference between them shows what the laser is worth.
        What cannot be shimmed away is corrected for, and its doubt stays in the result.

step-pads-zero = When the pads are warm and empty, zero them.
    .short = Pads zeroed
    .detail =
        Give the pads the warm-up that their maker asks for; cold cells drift.
        Nothing may lie on a pad or lean against it, slip plates excepted when they stay on.
        Watch each zero for half a minute: it must stand still.
        Zeros are read again each time the car is up, because a zero that moved spoils every load since the last one.

step-links-front-release = When both front wheels hang at equal height, undo one end of one front link.
    .short = Front link released
    .detail =
        With the wheels level to each other the bar is not wound up, and the bolt comes out without a jump.
        If the bolt is tight in its hole, the bar is still wound: lift one wheel a little with a jack until it is free, and keep your face and hands out of the link’s path.
        Tie the loose end clear of hose, tyre and shaft, and see that the bar moves freely by hand.
        Count every part that came off, washers too, and put them where they will be found.

step-links-rear-release = When both rear wheels hang at equal height, undo one end of one rear link.
    .short = Rear link released
    .detail =
        The same as at the front: level wheels, an unloaded bar, a bolt that slides out.
        If it does not slide, the bar is wound up and throws the link when it lets go; unload it first.
        Tie the loose end clear of hose, tyre, exhaust and shaft, and try the bar by hand.
        Count the parts; the same number must go back.

step-used-fuel = Set fuel and fluids to the agreed level.
    .short = Fuel and fluids
    .detail =
        Ten litres of fuel are more than seven kilograms, and they rarely sit in the middle of the car.
        Fill or drain by the maker’s procedure, in the open or with the air drawn off, with no flame, no lamp and no switch near it and an extinguisher in reach.
        Earth the container to the car before you pour.
        Wipe up what you spill and wait until the smell is gone before you go on.

step-used-kit = Take loose kit out of the car.
    .short = Loose kit out
    .detail =
        Boot, glovebox, door pockets and under the seats: everything that is not carried when the car is used.
        A toolbag in one rear corner looks like a spring that is wrong.
        What was agreed to be carried, such as a spare wheel, stays in its place and is strapped.

step-used-ballast = Strap the driver’s ballast into the seat and the footwell.
    .short = Ballast strapped in
    .detail =
        Use bags of sand, water cans or lead, never a person: nobody sits in a car that goes up or has someone beneath it.
        About a fifth belongs in the footwell, for the legs, and the rest low in the seat.
        Strap each piece so that it cannot slide when you pull hard at it; ballast that slides changes every reading and can shift the car on the lift.
        Carry small pieces, keep your back straight, and stay off the seat’s wiring and its airbag.

step-used-pressures = Set each tyre to its agreed working pressure.
    .short = Working pressures set
    .detail =
        Use one gauge for all four, and come to the figure from the same side each time.
        A tyre that stood in the sun reads higher than its neighbour in the shade; let them come to the same temperature first.
        Enter what the gauge shows, each within three hundredths of a bar of what was agreed.
        Fit the caps again, because a valve that seeps spoils the afternoon’s readings.

step-used-shut = Shut the doors, the bonnet and the boot.
    .short = Car shut
    .detail =
        An open door hangs tens of kilograms out to the side.
        Set the steering straight ahead, and reach in through the window if you need to, so that the car is not touched again.
        Pump the brake pedal until it is firm: pads that were pushed back leave a car with no brake at the first press.

step-raised-bushes = Loosen clamped rubber bushes.
    .short = Bushes slackened
    .detail =
        A clamped rubber bush is a spring of its own: it holds the height at which it was tightened.
        Slacken those that the maker clamps at ride height, so that the baseline is read without them; they are tightened at ride height at lock-off.

step-rough-set-angles = Set camber and toe near the agreed values.
    .short = Rough angles set
    .detail =
        Half a degree is near enough here; the exact setting comes after the balance.
        Enter what was really turned at each adjuster, and 0 where nothing was. What was worked out is only shown beside it.
