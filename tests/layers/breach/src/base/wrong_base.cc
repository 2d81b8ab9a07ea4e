#include <fstream>  // breach
#include <iostream>  // breach
#include <random>  // breach
#include <string>

#include <fogline/base/wrong_public.h>
#include <fogline/numerics/fit.h>  // breach

// printf("a comment may say what code may not");
void tell() {
  std::snprintf(text, sizeof(text), "formats, does not print");
  job.abort();
  std::printf("prints");  // breach
  std::exit(1);  // breach
  const auto now = std::chrono::system_clock::now();  // breach
}
