# Intake: what the car is, what was agreed, and with what it will be measured.

stage-intake = Intake

step-intake-car = Write down what the car is and what it is used for.
    .short = Car and its use
    .detail =
        Take wheelbase and track from the maker’s data, or measure them between the wheel centres with the wheels straight.
        The total is what should stand on the pads: the car with the agreed fuel and the driver’s ballast.
        Every later answer about level, cross weight and turns is worked out from these figures, so a slip here bends all of them.
        For the heights of the mass centre and the roll axis, take the maker’s data or the figures of a like car.

step-intake-layout = State how the car is sprung, driven and braked.
    .short = Layout of the car
    .detail =
        Look under the car and into the maker’s data; do not answer from memory.
        The springing decides whether this job may adjust at all: one spring for two wheels, or springs that are interconnected, active or not adjustable, are measured and advised on, not turned.
        High voltage, a plumbed-in extinguisher, an electric parking brake and a lifting mode each have their own dangers and steps.
        When you are not sure, give the answer that brings the extra step.

step-intake-bars = State how each anti-roll bar is linked.
    .short = Bars and links
    .detail =
        A bar ties left to right, so a link under tension hides what the springs are doing.
        A link is adjustable when its length can be changed: look for a threaded rod and lock nuts.
        Adjustable links are released before the readings and put back with no tension at the end.
        Fixed links stay on, and what they do to the loads is written on the sheet.

step-intake-springs = Write the springs, tyres and unsprung masses of each axle.
    .short = Springs and tyres
    .detail =
        The spring rate is printed on the spring or stands in its maker’s data.
        The motion ratio is spring travel over wheel travel or the other way round: both are called so, and one upside down spoils every predicted turn. Hardly any spring moves more than its wheel.
        Unsprung mass is that of one corner: wheel, tyre, brake, hub and about half of the arms.
        Where nobody knows the springs, say what the car is sprung like: the first turn is then a guess, and the rounds show what the springs do, as they show where known figures are a little off.

step-intake-adjusters = Describe the spring collars of each axle.
    .short = Spring collars
    .detail =
        Measure the pitch with a thread gauge or over ten turns; never guess it.
        Which way to turn follows from the hand of the thread and from whether the spring is above or below the collar, so look at both.
        Count the turns left in each direction before the thread, the spring or the tyre runs out of room.
        Choose a fixed point that does not move with the collar, and measure every collar position from it.
        A collar may be turned under load only when the adjuster’s maker says so in writing.

step-intake-pressures = Write the agreed tyre pressures, cold and working, for each wheel.
    .short = Agreed tyre pressures
    .detail =
        Cold is what the customer finds in the morning; working is what the tyre has when it is driven, and the readings are taken at it.
        Tyres of different size front and rear have pressures of their own; left and right are alike unless it was agreed otherwise.
        A tyre is a spring: a tenth of a bar on one corner is enough to be seen on the pads.
        Stay inside what the vehicle and tyre makers allow for this load and speed.

step-intake-heights = Write the agreed ride height of each wheel, and where it is measured.
    .short = Agreed ride heights
    .detail =
        Measure straight up from the plane of the pads to a hard point of the chassis: a jacking boss, a subframe bolt, a machined face.
        Never use an arch lip, because panels are fitted by eye and bend.
        Describe the points so that somebody else finds the same ones next year.
        Heights must leave the clearance that the maker and the law ask for.

step-intake-travel = State the kind of each axle, the wheel travel and the stiffness of the body.
    .short = Axles and wheel travel
    .detail =
        A beam axle carries both wheels of an axle; its springs see heave and roll differently, so measure straight across from spring to spring.
        The travel to the stops is that of the wheel at the agreed ride height: take it from the maker’s data, or measure it with the spring out and the car made safe.
        No plan then uses up more of it than you keep free, because a car that rides on a stop cannot be corner-balanced.
        Where a figure is not known, say so; nothing is guessed, and the plan then knows no stop.
        A body that twists takes up part of what you turn; leave it as stiff unless it was measured.

step-intake-angles = Write the agreed camber, toe and caster.
    .short = Agreed wheel angles
    .detail =
        Camber is negative when the top of the wheel leans in; toe is positive when the front of the wheel points in.
        Toe is entered for one wheel; the total of the axle is twice that.
        A window is how far a reading may be from what was agreed; a window finer than your instruments can see only gives ‘cannot tell yet’.
        The front wheels are set to the line that the rear axle pushes the car along, so that the steering wheel stands straight.

step-intake-angle-adjusters = Write what one turn of each adjuster does.
    .short = Angle adjusters
    .detail =
        Take it from the maker’s data; the first change that is read before and after corrects it.
        A step is the smallest part of a turn that you can set and hold while its nut is tightened.
        The inclination of the steering axis comes from the maker’s drawing; the caster is worked out with it.

step-intake-angle-geometry = Write how wheel travel and the adjusters move the angles besides.
    .short = Angle geometry
    .detail =
        What wheel travel into bump does to camber and toe tells how far a change of height has moved them.
        To measure it, read camber and toe of a wheel at two heights, with the spring out and the car made safe; write the travel between them and both changes.
        Setting camber moves toe too, and setting caster moves both: where a drawing or an earlier change tells by how much, the first plan is nearer.
        Count a turn as plus when it leans the top out or gives more caster; toe-in, top out and more caster are plus.
        Where it does not, say so: it is learned from the first change that is read before and after.

step-intake-wishes = Write the cross weight, the windows and the limits that were agreed.
    .short = Wishes and windows
    .detail =
        Cross weight is the share of the car on front right and rear left; half is wanted unless the use says otherwise.
        Collars move load along one line only, so not every wish can be met at once: which one comes first must be known before the first turn.
        Where the use wants another cross weight than half, such as a track that turns one way, write the one that was agreed.
        Traction wants the driven axle even, braking wants the front axle even, and the same feel left and right wants the cross weight.
        A careful setter aims for no more than seven or eight millimetres of height difference side to side and stops at ten.

step-intake-load = Write the driver’s mass, the fuel level and the fluids.
    .short = Driver and fuel
    .detail =
        The car is set as it is used, so ballast stands in for the driver, in driving kit.
        Write the fuel level as one that can be checked: full, or half by the gauge with the litres added.
        Say for every other fluid, washer and cooling tanks too, at which mark it stands.

step-intake-place = State how the car is raised, freed and checked in this bay.
    .short = Bay and people
    .detail =
        Tyres that cannot slide hold the car up by friction, so each settle needs slip plates or a roll over level run-offs.
        The wait after a settle lets rubber and dampers creep to rest; half a minute is a fair start.
        The person who checks the nuts and the record must be somebody else than the person at the car.

step-intake-pads = Write the pads, their accuracy and their calibration date.
    .short = Pads and date
    .detail =
        A reading is worth what the pads behind it are worth, so they are named with their id.
        Accuracy is written as the certificate states it, for about 95 %; where none is stated, take the maker's tolerance.
        The zero is what an empty pad may wander by over the job; the calibration is what it may be off by as a part of the load.

step-intake-instruments = Write the other instruments with their calibration dates.
    .short = Instruments and dates
    .detail =
        A reading is worth what the instrument behind it is worth, so each one is named with its id.
        The levelling laser must be class 2 or lower, and it needs a date as much as the pads do.
        The tool says now whether these instruments can ever judge the windows that were agreed; it is better to learn this before the car is in the air.
        Where one is past its date, a supervisor may let it pass with a reason, and the sheet will say so.
step-intake-angle-instruments = Write each instrument of the alignment with its accuracy.
    .short = Alignment instruments
    .detail =
        Accuracy is how far one reading may be off, nineteen times out of twenty, its resolution included.
        The gauge’s own bias does not count here: it is taken out by turning the gauge end for end.
        Lines may be strings or lasers; what counts is how well you read the distance from a rim to them.
        The program says at once whether these instruments can ever judge the windows that were agreed.

