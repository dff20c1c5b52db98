# Begriffe des Fachs und der eigenen Listen des Programms, von allen Teilen benutzt.

corner-FL = vorn links
corner-FR = vorn rechts
corner-RL = hinten links
corner-RR = hinten rechts

axle-front = vorn
axle-rear = hinten

rank-trainee = Auszubildende
rank-technician = Fachkraft
rank-supervisor = Aufsicht

signal-danger = GEFAHR
signal-warning = WARNUNG
signal-caution = VORSICHT
signal-notice = HINWEIS

verdict-inside = innerhalb
verdict-outside = außerhalb
verdict-cannot-tell = noch unklar

day = { $day }. { $month } { $year }
month-1 = Jan.
month-2 = Feb.
month-3 = März
month-4 = April
month-5 = Mai
month-6 = Juni
month-7 = Juli
month-8 = Aug.
month-9 = Sept.
month-10 = Okt.
month-11 = Nov.
month-12 = Dez.
