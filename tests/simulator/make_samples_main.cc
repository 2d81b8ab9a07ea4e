// make_samples FOLDER: the four sample scans and their truths.

#include "simulator/render.h"
#include "simulator/sample_scans.h"

#include <exception>
#include <iostream>
#include <string>

int main(int argc, char** argv) {
  if (argc != 2 || std::string(argv[1]).starts_with("-")) {
    std::cerr << "Usage: make_samples FOLDER\nWrites the sample scans and their truths there.\n";
    return 2;
  }
  try {
    for (filmsim::SampleScan& sample : filmsim::sample_scans()) {
      const auto simulated = filmsim::render(std::move(sample.scenario));
      std::cout << write_scan(simulated, std::string(argv[1]) + "/" + sample.name + ".tif") << '\n';
    }
  } catch (const std::exception& error) {
    std::cerr << "make_samples: " << error.what() << '\n';
    return 1;
  }
  return 0;
}
