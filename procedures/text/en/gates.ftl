# What each gate asks; `.help`: what to do when it does not pass.

gate-checks-yes = Every point was found in order.
    .help = Put right what was found wrong, then record the step again; where that cannot be done, hold or stop the job.

gate-car-possible = The entries make a car that can be.
    .help = Compare the figure that is named with the maker’s data, and look for a wrong unit or a slipped digit.

gate-instruments-in-date = No instrument is past its calibration date.
    .help = Use another instrument that is in date, or ask a supervisor who may let it pass with a reason.

gate-instruments-resolve = These instruments can judge the windows that were agreed.
    .help = Use finer instruments, agree a wider window, or ask a supervisor who may let it pass with a reason.

gate-second-person = Somebody else than the first person checked it.
    .help = Call a second person, who signs on and checks every point with their own hands.

gate-counted-back = As many parts went back as came off.
    .help = Look for the missing part on the bench, on the floor and under the car, then count again.

gate-pads-level = The pads are level enough for the windows that were agreed.
    .help = Shim the pads as shown, read them from both places again, or ask a supervisor who may let it pass with a reason.

gate-pressures = Each tyre is at its agreed pressure.
    .help = Set the tyre that is named, let all four come to one temperature, and read them again.

gate-heights-near = Heights, and their difference side to side, are near what was agreed.
    .help = Choose to set the heights first, or ask a technician who may let it pass with a reason.

gate-angles-near = Camber and toe are near what was agreed.
    .help = Change the angle that is named and read again, or ask a technician who may let it pass with a reason.

gate-settles-agree = The settles of this reading agree with each other.
    .help = Look for a plate that binds, a brake that drags, a tyre off its middle or a cable under the car, then settle and read again.

gate-plausible = The reading can be true of this car.
    .help = Look for swapped corners, a wrong unit, a door, a hand or a cable on the car, then read again.

gate-windows = Cross weight and heights are inside their windows.
    .help = Turn again, or ask a technician who may let it pass with the reason why this is the better stop.

gate-unchanged = Loads and heights are those of the reading before, within the spread of settles.
    .help = Settle and read once more; when it stays, find what moved (a collar, a bush, a link under tension) and put it right.

gate-waited = The car has rested for the whole wait.
    .help = Leave the car alone until the timer has run out, and bounce it again if somebody touched it.

gate-travel-left = The adjuster has the travel that was entered.
    .help = Check the sign and the count of the turns; when the collar is at its end, stop and ask for another plan.

gate-bump-gap = No wheel stands on its bump stop, and each keeps the travel that was agreed.
    .help = Measure again with the car at rest; where the gap is truly small, look for packers and at the ride height before anybody drives.

gate-same-as = The number is the one entered the first time.
    .help = Weigh it again; what is put back must be what was taken out.

gate-pads-still = The pads stand to each other as they did when they were levelled.
    .help = Look at the foot of the pad that is named, open the levelling again, or ask a supervisor who may let it pass with a reason.

gate-rims-true = No rim is further out of true than it may be.
    .help = Look at the rim, change it where it is bent and measure again, or ask a supervisor who may let it pass with a reason.

gate-angles-agreed = Camber, toe and caster are inside their windows.
    .help = Change the angle that is named and read again, or ask a technician who may let it pass with a reason.

gate-angles-resolve = These instruments can judge the windows of the angles.
    .help = Take a finer instrument, agree on a wider window, or ask a supervisor who may let it pass with a reason.
