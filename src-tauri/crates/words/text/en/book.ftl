# The book by its cars, by its instruments, and by where a figure comes from.

## Cars
cars-empty = No car was here yet. Begin a job at the car: its car stands here from then on.
cars-not-found = No car, nobody’s initials and no job number fit this search.
car-row = Visits: { $count }. { $last }
car-practice = Simulated car of seed { $seed }.
car-visit = { $job }. Signed on: { $people }. Departures: { $count }
car-learned = Learned on { $on } (days ago: { $days }) from what was turned and read. The next visit begins with it. Each value with ± expanded uncertainty (k = 2).
car-learned-none = Nothing is learned of this car yet. A sealed job in which collars were turned teaches it.
car-learned-settle = One settle moves { $kg } at front left along the diagonal pattern (one sigma).
learned-spring = Spring rate, { $corners }
learned-ratio = Motion ratio, { $corners }
learned-of-entered = { $percent } ± { $u } of what was entered; before that it was taken to be known to ± { $before }
learned-of-assumed = { $percent } ± { $u } of what was assumed, since nothing was entered; before that it was known to ± { $before }
car-left = As handed over on { $on }, job { $number }, with as found beside it.
car-left-none = Nothing was handed over yet. The settings stand here once a job on this car is sealed.
refused-no-such-car = There is no such car in this book. Look at the list of cars again.

## Instruments
instruments-empty = No instrument is written down yet. Intake asks each job for its pads, laser and gauges; they stand here from then on.
instrument-jobs = Jobs in which it was used: { $count }
due-in-date = In date: due on { $due } (days left: { $days })
due-overdue = Overdue: was due on { $due } (days past: { $days })
due-unknown = Unknown: its due day is written as “{ $text }”, not as 2027-03-31
due-not-recorded = Unknown: no due day is recorded
calibrated-not-recorded = Not recorded: intake asks for the day when it is due
checks-not-recorded = Not recorded: no step asks for a check of it
check-zeros = Zeros of the empty pads read { $count } times, last { $at }, { $by } (job { $job }, no. { $entry })
check-set-ups = Pads read from two places of it, at most { $mm } apart: { $at }, { $by } (job { $job }, no. { $entry })
check-turned = Turned end for end on a wheel: { $direct } and { $turned }: { $at }, { $by } (job { $job }, no. { $entry })

## Where a figure comes from
figure-load-kg = Load, { $corner }
figure-height-mm = Height, { $corner }
origin-found = As found: { $value }
origin-left = As left: { $value }
origin-settle = Settle { $number } of { $count }
origin-looks = { $typed } (mean { $mean })
origin-no-instrument = Instrument not recorded
stood-front-link-absent = no front bar
stood-front-link-fixed = front link fixed
stood-front-link-connected = front link on
stood-front-link-released = front link released
stood-rear-link-absent = no rear bar
stood-rear-link-fixed = rear link fixed
stood-rear-link-connected = rear link on
stood-rear-link-released = rear link released
stood-ballast-out = no ballast
stood-ballast-strapped = ballast strapped in
stood-pressures-as-found = pressures as found
stood-pressures-working = working pressures
stood-pressures-cold = cold pressures
stood-fuel-as-found = fuel as found
stood-fuel-agreed = fuel and fluids as agreed
stood-collars-as-found = collars as found
stood-collars-turned = collars turned since the job began: { $turns }
refused-no-such-figure = This job has no such figure. Look at its figures again.
