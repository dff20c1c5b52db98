# The book by its cars, by its instruments, and by where a figure comes from.

## Cars
cars-empty = No car was here yet. Begin a job at the car: its car stands here from then on.
cars-not-found = No car, nobody’s initials and no job number fit this search.
car-row = Visits: { $count }. { $last }
car-practice = Simulated car of seed { $seed }.
car-visit = { $job }. Signed on: { $people }. Departures: { $count }
car-learned = Learned on { $on }, { $days } days ago, from what was turned and read. The next visit begins with it. Each value with ± expanded uncertainty (k = 2).
car-learned-none = Nothing is learned of this car yet. A sealed job in which collars were turned teaches it.
car-learned-settle = One settle moves { $kg } at front left along the diagonal pattern (one sigma).
learned-spring = Spring rate, { $corners }
learned-ratio = Motion ratio, { $corners }
learned-of-entered = { $percent } ± { $u } of what was entered; before that it was taken to be known to ± { $before }
learned-of-assumed = { $percent } ± { $u } of what was assumed, since nothing was entered; before that it was known to ± { $before }
car-left = As handed over on { $on }, job { $number }, with as found beside it.
car-left-none = Nothing was handed over yet. The settings stand here once a job on this car is sealed.
refused-no-such-car = There is no such car in this book. Look at the list of cars again.
