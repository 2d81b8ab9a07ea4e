// make_samples FOLDER: the sample scans, their truths, and a step wedge with its certificate.

#include "simulator/render.h"
#include "simulator/sample_scans.h"

#include <exception>
#include <fstream>
#include <iostream>
#include <stdexcept>
#include <string>

namespace {

void write_certificate(const filmsim::WedgePlan& wedge, const std::string& path) {
  std::ofstream out(path);
  out << "step,density\n";
  for (std::size_t i = 0; i < wedge.certified.size(); ++i) {
    out << i + 1 << ',' << wedge.certified[i] << '\n';
  }
  if (!out.flush()) throw std::runtime_error(path + " can't be written");
}

}  // namespace

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
    const filmsim::WedgePlan wedge = filmsim::sample_wedge();
    const std::string path = std::string(argv[1]) + "/wedge";
    write_wedge(filmsim::render_wedge(wedge), wedge, path + ".tif");
    write_certificate(wedge, path + ".csv");
    std::cout << path << ".tif\n";
  } catch (const std::exception& error) {
    std::cerr << "make_samples: " << error.what() << '\n';
    return 1;
  }
  return 0;
}
