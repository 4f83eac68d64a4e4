// Numbers and texts as the bytes of a document text: whole numbers seven bits a byte, least first, so that small ones take
// one; signed ones folded so that -1 is as small as 1.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fogsheet {

class ByteWriter {
 public:
  void whole(std::uint64_t value);
  void signed_whole(std::int64_t value);
  void text(std::string_view text);  // its length in bytes, then them
  void raw(std::span<const std::uint8_t> bytes);

  const std::vector<std::uint8_t>& bytes() const { return bytes_; }

 private:
  std::vector<std::uint8_t> bytes_;
};

/// Reads what a ByteWriter wrote. After a failure, and only then, `ok` is false; all that is read from then on is nought or
/// empty, so that a whole row may be read before looking.
class ByteReader {
 public:
  explicit ByteReader(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

  bool ok() const { return ok_; }
  std::size_t left() const { return bytes_.size(); }
  bool at_end() const { return ok_ && bytes_.empty(); }

  /// Fails at the end of the bytes, past 64 bits, and on a longer form of a number than need be.
  std::uint64_t whole();
  std::int64_t signed_whole();

  /// Fails when it is longer than `most_bytes`, or than what is left.
  std::string_view text(std::size_t most_bytes);
  std::span<const std::uint8_t> raw(std::uint64_t count);

 private:
  bool ok_ = true;
  std::span<const std::uint8_t> bytes_;
};

}  // namespace fogsheet
