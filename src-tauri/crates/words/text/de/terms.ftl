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
verdict-cannot-tell = noch nicht entscheidbar
