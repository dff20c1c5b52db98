# Words of the trade and of the program's own closed lists, used by every part.

corner-FL = front left
corner-FR = front right
corner-RL = rear left
corner-RR = rear right

axle-front = front
axle-rear = rear

rank-trainee = trainee
rank-technician = technician
rank-supervisor = supervisor

signal-danger = DANGER
signal-warning = WARNING
signal-caution = CAUTION
signal-notice = NOTICE

verdict-inside = inside
verdict-outside = outside
verdict-cannot-tell = cannot tell yet

day = { $day } { $month } { $year }
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec
