# Labels of the windows; every id begins with ui-.
