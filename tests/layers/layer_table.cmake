# Which layer may include which, and which layer may know which library. This table is the law that
# check_layers.cmake enforces; change it where the design changes, never to silence a breach.

# The core, lowest first. `words` says its facts in English; `record` closes it: what is reported,
# logged and read back.
set(core base numerics film density sensitometry tint marks roll process words record)
# The edges touch files, pages and databases, and know nothing of each other; `files` alone, how a
# file is opened, refused and written, serves the others.
set(edges files pixels tables logbook page terminal)

set(base_includes base)
set(numerics_includes base numerics)
set(film_includes base numerics film)
set(density_includes base numerics film density)
# Siblings: three readings of the same densities, none built on another.
set(sensitometry_includes base numerics film density sensitometry)
set(tint_includes base numerics film density tint)
set(marks_includes base numerics film density marks)
set(roll_includes base numerics film density sensitometry tint marks roll)
set(process_includes ${roll_includes} process)
set(words_includes ${process_includes} words)
set(record_includes ${words_includes} record)
set(files_includes base files)
set(pixels_includes base numerics files pixels)
set(tables_includes ${core} files tables)
set(logbook_includes ${core} files logbook)
set(page_includes ${core} page)
set(terminal_includes ${core} terminal)
set(app_includes ${core} ${edges} app)

# Libraries from outside: a pattern of the header's name, then `=`, then the layers whose sources in
# src/ may include it. A header that fits no pattern and is not the language's own is a breach too:
# a new library needs a row here first.
set(library_rules
    "^tiff[a-z]*[.]h$=pixels"
    "^lcms2[a-z_]*[.]h$=pixels"
    "^png[a-z]*[.]h$=pixels"
    "^(jpeglib|jerror|jmorecfg|turbojpeg)[.]h$=pixels"
    "^libraw/=pixels"
    "^toml[+][+]/|^toml[+][+][.]h$=tables"
    "^opencv2/=film density tint marks"
    "^(unsupported/)?Eigen/=numerics"
    "^SQLiteCpp/|^sqlite3[.]h$=logbook"
    "^nlohmann/=record tables"
    "^boost/crc[.]hpp$=tables"
    "^boost/program_options=app"
    # The operating system: whoever touches files or the terminal.
    "^(unistd|fcntl|signal|poll|termios)[.]h$|^sys/=files pixels logbook app")

# A library header so costly to compile that only .cc files may include it.
set(source_only_headers "^nlohmann/json[.]hpp$")

# Headers of the language that no layer but app may include (only app prints), and those that the
# core may not include either (it opens no file and draws no random number).
set(headers_of_app "^(iostream|print)$")
set(headers_outside_core "^(fstream|filesystem|random|ctime)$")

# Calls that print or end the program, and readings of the clock or of chance. A `.`, `>` or letter
# before the name makes it another function (snprintf, object.abort()).
set(calls_of_app
    "(^|[^a-zA-Z0-9_.>])(printf|fprintf|vprintf|puts|fputs|putchar|perror|exit|_Exit|_exit|quick_exit|abort|terminate)[ ]*\\(")
set(calls_outside_core
    "(system_clock|steady_clock|high_resolution_clock|std::time[ ]*\\(|std::clock[ ]*\\(|std::s?rand[ ]*\\(|random_device|clock_gettime)")

# Budgets, in lines. They are a smell detector: exceeding one is listed, not punished.
set(source_budget_lines 400)
set(header_budget_lines 150)
