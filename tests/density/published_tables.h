// What published scanners made of published step wedges.
#pragma once

#include <vector>

namespace fogline::published {

/// A step of a published table: density, code and the code's scatter over pixels.
struct TableStep {
  double density;
  double code;
  double scatter;
};

// Step wedge of digitiser A, mean and standard deviation of grey level over regions of 80 x 30
// pixels: University of South Florida, calibration page of the open collection of digitised
// mammograms (DDSM). The standard deviation of a region's mean is 1 / sqrt(2400) of it; a wedge
// read to 0.01 and streaks of the digitiser leave 0.005.
inline const std::vector<TableStep> digitiser_a{
    {0.04, 55722, 350.3}, {0.21, 37201, 583.6}, {0.34, 26986, 318.4}, {0.50, 18445, 217.1},
    {0.69, 12569, 148.0}, {0.82, 8296, 99.9},   {0.96, 5648, 106.5},  {1.13, 3797, 44.4},
    {1.28, 2603, 32.7},   {1.44, 1772, 22.7},   {1.59, 1217, 18.2},   {1.74, 847, 13.4},
    {1.89, 581, 9.0},     {2.07, 393, 6.1},     {2.21, 271, 4.3},     {2.37, 185, 3.2},
    {2.52, 132, 2.7},     {2.68, 94, 2.5},      {2.84, 65, 2.1},      {2.99, 47, 1.8},
    {3.13, 34, 1.6},      {3.60, 5, 1.1}};

// Digitiser E, 16 bits: University of Illinois technical report 98-006, average of four scans.
inline const std::vector<TableStep> digitiser_e_16{
    {0.04, 53988.92, 30}, {0.14, 39777.25, 25}, {0.24, 29026.15, 20}, {0.34, 21050.88, 15},
    {0.44, 15321.55, 12}, {0.54, 11453.41, 10}, {0.63, 8532.39, 9},   {0.74, 6165.75, 8},
    {0.84, 4654.62, 7},   {0.94, 3466.13, 6},   {1.04, 2626.01, 6},   {1.14, 2011.48, 5}};

// Digitiser E, 8 bits, codes rise with density: report 98-007. Codes here count from white.
inline const std::vector<TableStep> digitiser_e_8{
    {0.04, 255 - 13.51, 0.3},  {0.14, 255 - 34.89, 0.3},  {0.24, 255 - 56.21, 0.3},
    {0.34, 255 - 76.97, 0.3},  {0.44, 255 - 96.33, 0.3},  {0.54, 255 - 113.20, 0.3},
    {0.63, 255 - 129.19, 0.3}, {0.74, 255 - 146.65, 0.3}, {0.84, 255 - 160.68, 0.3},
    {0.94, 255 - 174.00, 0.3}, {1.04, 255 - 186.33, 0.3}, {1.14, 255 - 198.04, 0.3},
    {1.24, 255 - 208.70, 0.3}, {1.35, 255 - 217.13, 0.3}, {1.44, 255 - 225.26, 0.3},
    {1.54, 255 - 232.95, 0.3}, {1.65, 255 - 239.59, 0.3}, {1.75, 255 - 245.27, 0.3},
    {1.86, 255 - 249.87, 0.3}, {1.96, 255 - 253.52, 0.3}};

}  // namespace fogline::published
