#include <iostream>

#include <boost/program_options.hpp>
#include <fogline/io/open_scan.h>
#include <fogline/logbook/logbook.h>
#include <fogline/report/text.h>

int main() { std::exit(0); }
