// The yardstick of every ratio: a million std::sin, as WebAssembly on the machine and in the run that the rest is timed in.
// Prints the median of 15 rounds in milliseconds.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <vector>

int main() {
  std::vector<double> rounds_ms;
  double sum = 0;
  for (int round = 0; round < 15; ++round) {
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 1'000'000; ++i) sum += std::sin(1e-3 * i);
    rounds_ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  std::sort(rounds_ms.begin(), rounds_ms.end());
  std::printf("%.3f %.3f\n", rounds_ms[rounds_ms.size() / 2], sum);
}
