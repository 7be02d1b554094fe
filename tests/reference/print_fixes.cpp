// SPDX-License-Identifier: GPL-3.0-or-later
//
// print_fixes FILE: the fixes of a recording as JSON, one list a line: latitude, longitude, height, time, at
// full precision. compare_gpx.py reads it.
#include <cstdio>
#include <string>

#include "core/import/recording.h"
#include "core/number_text.h"

namespace {

std::string cell(const std::optional<double>& x) {
  return x ? layshaft::numberText(*x) : "null";
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) return 2;
  const auto recording = layshaft::loadRecording(words[1]);
  if (!recording) {
    std::fprintf(stderr, "refused at line %zu\n", recording.problem().line);
    return 1;
  }
  for (const layshaft::Fix& fix : recording->fixes)
    std::printf("[%s, %s, %s, %s]\n", layshaft::numberText(fix.north).c_str(),
                layshaft::numberText(fix.east).c_str(), cell(fix.heightM).c_str(), cell(fix.timeS).c_str());
  return 0;
}
