# From the rough geometry to the links back without preload.

stage-rough = Rough geometry
stage-baseline = Baseline
stage-loop = Read and adjust
stage-lock = Lock off
stage-locked = Locked reading
stage-back = Links back

step-rough-set = Turn the collars towards the agreed heights.
    .short = Collars turned roughly
    .detail =
        A car that stands far from its heights is brought near them first, because big changes later would move loads and angles again.
        Turn only with the axle off the ground, the locking ring loose and the thread clean.
        Count aloud and enter what you really turned at each wheel, with plus for raising the car; nought is an answer too.
        Watch that each spring stays captive between its seats as you lower a collar.

step-rough-heights = Read the four ride heights.
    .short = Rough heights read
    .detail =
        Measure at the agreed points, straight up from the pad, without leaning on the car.
        Near enough is five millimetres from what was agreed, and three in the difference side to side.
        If they are further off, choose to set them and the car goes up; if that is how the car is wanted, a technician lets it pass with a reason.
        Without freed tyres these figures mean nothing, so the car has been settled first.

step-rough-angles = Read camber and toe at each wheel.
    .short = Rough angles read
    .detail =
        This reading is coarse: half a degree is near enough now.
        Angles that are far out drag the tyres sideways when the car settles, and that holds it up.
        What is further off is set near its value before the baseline, or a technician writes why not.

step-baseline-placed = Check that each tyre stands in the middle of its pad.
    .short = Tyres centred
    .detail =
        Within thirty millimetres of the middle is good; a tyre near the edge loads the pad’s frame and reads wrong.
        The car must be free to roll: brake off, out of gear, nothing against a tyre.
        If one tyre is off its middle, roll the car or lift it again; do not push the pad under load.

step-baseline-read-1 = Read loads and heights, first settle.
    .short = Baseline, first settle
    .detail =
        Look at each pad three times without touching the car, a few seconds apart, and enter all three looks.
        Then read the heights at the agreed points, front to rear, always in the same order.
        This is where the car starts, and everything that follows is compared with it, so take your time.
        Stand off the pads and keep others from leaning on the car.

step-baseline-read-2 = Read loads and heights, second settle.
    .short = Baseline, second settle
    .detail =
        The car has been freed, bounced and left to rest once more, and nothing else was changed.
        Do not aim for the first figures: one to three kilograms of difference at a corner is usual.
        This difference is how well the car repeats, and the looks at one settle cannot show it.

step-baseline-read-3 = Read loads and heights, third settle.
    .short = Baseline, third settle
    .detail =
        With three settles the spread can be trusted.
        If a corner differs by more than three kilograms, look for its cause before going on: a plate that binds, a brake that drags, a tyre at the pad’s edge, a cable under the car, a joint that sticks.
        No turn of a collar is worth more than this spread allows.

step-loop-turn-FL = Turn the front left collar as planned.
    .short = Front left collar turned
    .detail =
        Read the plan as what the car does, then as which way the collar goes, then as turns; if the three do not fit together, stop and ask.
        Ring loose, thread clean, spanner fully on the collar; count aloud, and mark the collar so that you see a full turn.
        Enter what you really turned, with plus for raising the car, even when it is not what was planned; nought is an answer.
        Feel the collar all the way: if it goes stiff, turn back and clean it.

step-loop-turn-FR = Turn the front right collar as planned.
    .short = Front right collar turned
    .detail =
        On the other side of the car your hand is mirrored, but the collar is not: clockwise is always seen from above.
        Ring loose, thread clean, spanner fully on the collar; count aloud.
        Enter what you really turned, with plus for raising the car; nought is an answer.
        See that the spring end has not walked off its stop.

step-loop-turn-RL = Turn the rear left collar as planned.
    .short = Rear left collar turned
    .detail =
        Check that you are at the wheel that the board names: the wrong corner costs a whole round.
        Ring loose, thread clean, spanner fully on the collar; count aloud, seen from above.
        Enter what you really turned, with plus for raising the car; nought is an answer.
        Where the spring and the damper stand apart, see that the spring sits in both its seats.

step-loop-turn-RR = Turn the rear right collar as planned.
    .short = Rear right collar turned
    .detail =
        Check that you are at the wheel that the board names.
        Ring loose, thread clean, spanner fully on the collar; count aloud, seen from above.
        Enter what you really turned, with plus for raising the car; nought is an answer.
        Before you walk away, look once more at all four: rings loose, tools off the car.

step-loop-read-1 = Read loads and heights after this round, first settle.
    .short = Round read, first settle
    .detail =
        Three looks at each pad, hands off the car, then the heights in the usual order.
        The reading is of the car after your turns, so it counts only with the same ballast, fuel, pressures and doors as before.
        If it differs much from what was predicted, say so now: a wrong corner or a wrong direction shows here first.

step-loop-read-2 = Read loads and heights after this round, second settle.
    .short = Round read, second settle
    .detail =
        The car was freed, bounced and left to rest again.
        Two settles that agree within three kilograms at each corner are enough to judge a round.
        If they do not agree, find what holds the car before you turn anything else.

step-loop-judge = Choose what to do next.
    .short = Round judged
    .detail =
        Look at the line: where the car is, how sure that is, and which stops the collars can reach.
        Going on is right when cross weight and heights are inside their windows, or when the next gain would cost a height difference that was not agreed.
        It is also right when what is left is smaller than the readings can resolve; turning for less only moves the noise about.
        Write the reason in words that the customer could read.

step-loop-advise = Write what you advise for this car.
    .short = Advice written
    .detail =
        The springs of this car cannot be set by this procedure, so the reading is what the customer gets.
        Say what the figures show, what could be done about it (mass moved, parts changed, the maker’s own method) and what you did not do.
        Promise nothing that was not measured.

step-lock-rings = Tighten each locking ring without moving its collar.
    .short = Collars locked
    .detail =
        Hold the collar with one spanner and tighten the ring against it with the other; watch your mark, because a collar that creeps takes the balance with it.
        At full droop try to turn each spring by hand: it must be captive in both its seats.
        At least as much thread must be engaged as the adjuster’s maker asks for.
        Write down the gap to the bump stop as it will be at ride height.

step-lock-bushes = Tighten the rubber bushes at ride height.
    .short = Bushes set
    .detail =
        A rubber bush that is clamped while the wheel hangs becomes a spring that holds the car up, and it tears early.
        With the car on its wheels, slacken the inner bolts of those arms, bounce the car, and tighten them at ride height to the maker’s torque.
        Brake on or chocks both ways, and only your arm goes under the car.
        Where arms have ball joints only, or the maker sets another way, write so and follow it.

step-lock-nuts = Tighten the wheel nuts in pattern to the maker’s torque.
    .short = Wheel nuts torqued
    .detail =
        Take the torque from the maker’s data for this car and this wheel; write it down as it is set on the wrench.
        Go in a star, in two passes, with the car on its wheels and the brake on.
        Threads and seats are clean and dry unless the maker says otherwise.
        The wrench clicks once; pulling on past the click stretches the stud.

step-lock-nuts-second = As the second person, check the torque of every wheel nut.
    .short = Wheel nuts, second person
    .detail =
        You are here because the first person can be sure and wrong.
        Set the wrench yourself, from the maker’s figure and not from theirs, and go to each nut of each wheel, touching and counting.
        A nut that still turns before the click means that the whole wheel is done again.
        Your name stands beside theirs.

step-locked-read = Read loads and heights with everything locked.
    .short = Locked reading
    .detail =
        Locking must move nothing: this reading equals the last one within the spread of settles.
        If one diagonal has gained and the other lost, a collar crept while its ring was tightened.
        Bushes that were tightened at ride height move little; when they move it, the new figure is the true one.
        Find out which it is before you go on.

step-back-front = Adjust the front link until its bolt slides in by hand.
    .short = Front link back on
    .detail =
        The car stands on its pads with ballast in, as it is used; at another height the link would be right for another car.
        Only the link that was released is adjusted: turn it until hole and bolt line up and the bolt goes in with two fingers, without a lever and without a hammer.
        Enter the turns that you made, tighten lock nuts and link nut to the maker’s torque, and count every part back.
        Brake on or chocked, and only your arm goes under.

step-back-front-read = Read loads and heights with the front link on.
    .short = Front link read
    .detail =
        The car is free again: chocks away, brake off, settled.
        Loads and heights must be those of the locked reading within the spread of settles; a change means that the bar is wound up and carries load.
        The front is read before the rear is put on, because two preloads can cancel in the loads while the body leans.
        If it moved, choose to adjust the link again.

step-back-rear = Adjust the rear link until its bolt slides in by hand.
    .short = Rear link back on
    .detail =
        As at the front: on the pads, ballast in, brake on or chocked, only your arm under the car.
        Turn the released link until the bolt slides in with two fingers.
        Tighten lock nuts and link nut to the maker’s torque, and see that the link stands clear of hose, tyre and shaft.
        Count every part back; one washer left over means that you look again.

step-back-rear-read = Read loads and heights with both links on.
    .short = Both links read
    .detail =
        Chocks away, brake off, settled; three looks, then the heights.
        Compare with the locked reading: loads and heights both, since a bar under tension can lean the body and leave the loads nearly alone.
        If it moved, only the rear link is at question, because the front one was found right by itself.

step-back-fixed = Write down the preload of the fixed links.
    .short = Fixed links noted
    .detail =
        A link that cannot be adjusted keeps what tension it has, and the cross weight that is handed over is the one with it on.
        Write what you can see and feel without undoing it: a link that turns freely by hand carries little, one that stands stiff carries load.
        If the preload is large, the customer should know that an adjustable link would take it out.

step-lock-gap = Measure the gap to the bump stop at each corner.
    .short = Bump gap measured
    .detail =
        With the car on its wheels at the height that was read, so that the gap is the travel that is left.
        A gap much smaller than before means that the car will ride on its stops; tell the technician.
