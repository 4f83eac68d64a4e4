// Random numbers from a seed, the same bits natively and as WebAssembly: exercises travel as a seed in a link.
// The generator is xoshiro256** seeded by splitmix64; the distributions use only arithmetic that IEEE 754 fixes to the last
// bit, never the library's logarithm or cosine.
// Source: Blackman and Vigna (2021), Scrambled linear pseudorandom number generators, ACM TOMS 47(4).
#pragma once

#include <cstdint>

namespace fogsheet {

class Random {
 public:
  /// Any seed is good, nought among them.
  explicit Random(std::uint64_t seed);

  /// 64 random bits.
  std::uint64_t next();

  /// In [0, 1), a multiple of 2^-53.
  double uniform();

  /// In [least, most), for finite bounds with least <= most.
  double uniform(double least, double most);

  /// A whole number in [least, most], each equally likely.
  std::int64_t whole(std::int64_t least, std::int64_t most);

  /// Normal with mean 0 and standard deviation 1, by inversion.
  double normal();

 private:
  std::uint64_t state_[4];
};

/// The normal deviate below which a share `probability` in (0, 1) lies.
/// Source: Wichura (1988), Algorithm AS 241, Applied Statistics 37, 477-484 (PPND16, about 1 part in 10^16).
double normal_quantile(double probability);

}  // namespace fogsheet
