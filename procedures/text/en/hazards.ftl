# Hazards. The name; `.line`: one command for the far side of the bay; `.text`: command, hazard and harm, and whom to follow.
# The signal word stands in the procedure document; the text bears it out by ANSI Z535.4: a danger will, a warning could
# kill or seriously injure, a caution could injure less.

-rules =
    Follow the instructions of the lift maker and the vehicle maker, and the local rules.
    Work on safety parts is for trained and authorised people.
-rules-short = Follow the maker’s instructions and the local rules.

hazard-raised-vehicle = Raised car
    .line = Keep out until it is locked
    .text =
        Keep every part of your body out from under the car until it has been rocked and stands on engaged locks or on rated stands.
        A jack alone does not hold a car.
        A car that slips off its lift comes down faster than you can move, and will crush you to death.
        { -rules }

hazard-people-aboard = People in a raised car
    .line = Nobody in the car
    .text =
        Count everybody out of the car before it goes up, and let nobody in while it is raised or while anyone is beneath it.
        A person who moves inside shifts the weight on the lift; the car will fall, and will kill those in it and under it.
        Ballast takes the driver’s place.
        { -rules }

hazard-high-voltage = High voltage
    .line = Keep off orange cables
    .text =
        Keep hands and tools away from orange cables and what they lead to, until a person trained for high voltage has made the car safe and shown it to be dead.
        The voltage will stop your heart at a touch, and its arc burns deep, even with the ignition off.
        { -rules }

hazard-lowering = Car coming down
    .line = Stand clear, car coming down
    .text =
        Stand where you see the whole car, keep feet and hands clear of tyres, pads and lift arms, and lower slowly with your eye on it.
        A tyre or an arm that comes down on you, or a car that hangs up and then drops, could crush a limb or kill.
        Stop at once when anything catches, tilts or creaks.
        { -rules }

hazard-crush-low = Reaching under a low car
    .line = Brake on before you reach under
    .text =
        Put the brake on or chock the wheels both ways before you reach under a car that stands on its wheels, and reach with an arm, never with your head or chest.
        A car that rolls off a pad or sinks on its springs could crush your arm, hand or head.
        { -rules }

hazard-balance-shift = Balance on the lift
    .line = Watch the balance
    .text =
        Before you take off or add weight, think where the balance of the car goes, and keep the change small and even.
        Wheels, ballast or heavy parts moved at one end can tip a car off its lifting points, and a falling car could kill you.
        { -rules }

hazard-self-levelling = Suspension that moves by itself
    .line = Keep hands out of the arches
    .text =
        Keep hands and head out of the wheel arches and from under the sills until the lifting mode is set and shown to be set.
        Self-levelling, air or hydraulic suspension, and an electric parking brake too, can move by themselves with great force, and could crush a hand or a head.
        { -rules }

hazard-stored-spring = Stored spring energy
    .line = Keep hands off loaded springs
    .text =
        Keep hands and face out of line with a compressed spring, and turn no collar and undo no damper nut unless the spring is captive and the maker’s way is followed.
        A spring that escapes strikes like a hammer, and could break bones, blind or kill.
        { -rules }

hazard-wound-bar = Wound-up anti-roll bar
    .line = Unload the bar, stand aside
    .text =
        Bring both wheels of the axle to equal height before you undo a link, and keep your face and hands out of the way that the link can take.
        A wound-up bar throws its link when the bolt comes out, and could break your hand or put out an eye.
        Wear eye protection.
        { -rules }

hazard-pinch = Pinch points
    .line = Keep fingers out of gaps
    .text =
        Keep fingers out of the gaps between collar and spring, wheel and arch, link and bracket; hold the tool, not the part.
        When the load comes on, or when the tool slips, a gap that closes could crush or cut off a finger.
        { -rules }

hazard-loose-nuts = Loose wheel nuts
    .line = Torque every nut before rolling
    .text =
        Tighten every wheel nut in pattern, to the maker’s torque, before the car is driven, and have a second person check it.
        A wheel that comes off could kill those in the car and those beside the road.
        { -rules }

hazard-fuel-fire = Fuel and fire
    .line = Keep flame and sparks away
    .text =
        Keep flame, sparks, hot lamps and switches away from fuel and its vapour, draw the air off, and keep an extinguisher in reach.
        Vapour runs along the floor, catches fire at a spark you did not think of, and could burn you to death.
        Stop the work when you smell fuel.
        { -rules }

hazard-airbag-seat = Airbag and seat wiring
    .line = Keep off airbag wiring
    .text =
        Lay ballast so that it presses on no connector, no side airbag and no belt tensioner; pull no plug unless the maker’s procedure says how.
        An airbag that goes off beside you could break your neck, face or arm.
        { -rules }

hazard-moving-car = Car free to roll
    .line = Stand clear of its path
    .text =
        Stand beside the car, never before or behind it, and have one person ready to stop it, before chocks or brake are released.
        A car in neutral that rolls off its pads could run you over or crush you against the wall.
        { -rules }

hazard-road-test = Road test
    .line = Drive only when authorised
    .text =
        Drive only when you are licensed, insured and authorised to, with links on, nuts at their torque with two names, ballast out, brakes firm and the extinguisher live.
        A car that is not finished, or that handles in a new way, could leave the road and kill you or others.
        { -rules }

hazard-extinguisher = Plumbed-in extinguisher
    .line = Keep off the extinguisher pull
    .text =
        Find the pull and its cable first, and keep hands, knees and tools off them while the pin goes in or out.
        A discharge in a closed car takes your sight and breath for a moment, and could hurt eyes and lungs.
        { -rules-short }

hazard-hot-parts = Hot parts
    .line = Let hot parts cool
    .text =
        Let exhaust, brakes and engine cool, or wear gloves that suit the heat, before you reach near them.
        They stay hot long after the engine stops, and could burn your skin.
        { -rules-short }

hazard-trip = Cables and pedals on the floor
    .line = Clear the walkway
    .text =
        Lead pad cables, air lines and the foot pedal round the outside, and keep the walkway free of shims, plates and tools.
        A fall against a lift or a car could sprain a wrist or cut your head.
        { -rules-short }

hazard-laser = Laser light
    .line = Never look into the beam
    .text =
        Use a laser of class 2 at most, set it below or above eye height, keep it off mirrors and shiny metal, and never point it at or look into the beam.
        The beam dazzles, and a stare into it could hurt your eyes.
        { -rules-short }

hazard-lifting-weight = Lifting by hand
    .line = Lift heavy parts in pairs
    .text =
        Lift with your legs, close to your body and in small pieces, and ask for a second person with wheels, pads and ballast; wear safety shoes and gloves.
        A heavy part held at arm’s length, or one that drops, could strain your back or bruise your foot.
        { -rules-short }

hazard-parking-brake = Parking brake that moves by itself
    .line = Keep hands off the calipers
    .text =
        Keep hands away from the rear calipers and tell everybody before you switch the brake.
        An electric parking brake can close or open by itself with great force, and could crush a finger or let the car roll.
        { -rules }

hazard-loose-fasteners = Loose steering or suspension fastener
    .line = Tighten every fastener you touched
    .text =
        Tighten every fastener that you touched to the maker’s torque and mark it.
        A loose tie rod or arm can come off on the road, and a car that cannot be steered could kill or maim.
        { -rules }

hazard-platform-fall = Platform of a four-post lift
    .line = Mind the edge, chock the ends
    .text =
        Set the end stops of the platforms before the car may roll, keep to the walkway of the lift, and keep the lift low while people stand on it.
        A car that rolls off its platform could crush you, and a step back over the edge could break a leg or your neck.
        { -rules }
