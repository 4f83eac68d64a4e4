#include "core/formats/bytes.h"

namespace fogsheet {
namespace {

constexpr int k_bits_a_byte = 7;
constexpr std::uint8_t k_more = 0x80;
constexpr int k_last_shift = 63;  // of the tenth byte, which holds the 64th bit alone

}  // namespace

void ByteWriter::whole(std::uint64_t value) {
  while (value >= k_more) {
    bytes_.push_back(static_cast<std::uint8_t>(value | k_more));
    value >>= k_bits_a_byte;
  }
  bytes_.push_back(static_cast<std::uint8_t>(value));
}

void ByteWriter::signed_whole(std::int64_t value) {
  const std::uint64_t doubled = static_cast<std::uint64_t>(value) << 1;
  whole(value < 0 ? ~doubled : doubled);
}

void ByteWriter::text(std::string_view text) {
  whole(text.size());
  bytes_.insert(bytes_.end(), text.begin(), text.end());
}

void ByteWriter::raw(std::span<const std::uint8_t> bytes) { bytes_.insert(bytes_.end(), bytes.begin(), bytes.end()); }

std::uint64_t ByteReader::whole() {
  std::uint64_t value = 0;
  for (int shift = 0; ok_; shift += k_bits_a_byte) {
    if (bytes_.empty() || shift > k_last_shift) break;
    const std::uint8_t byte = bytes_.front();
    bytes_ = bytes_.subspan(1);
    value |= static_cast<std::uint64_t>(byte & (k_more - 1)) << shift;
    if (byte & k_more) continue;
    const bool too_long = shift > 0 && byte == 0;
    const bool too_large = shift == k_last_shift && byte > 1;
    if (too_long || too_large) break;
    return value;
  }
  ok_ = false;
  return 0;
}

std::int64_t ByteReader::signed_whole() {
  const std::uint64_t folded = whole();
  const std::uint64_t halved = folded >> 1;
  return static_cast<std::int64_t>(folded & 1 ? ~halved : halved);
}

std::string_view ByteReader::text(std::size_t most_bytes) {
  const std::uint64_t length = whole();
  if (length > most_bytes) ok_ = false;
  const std::span<const std::uint8_t> bytes = raw(length);
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

std::span<const std::uint8_t> ByteReader::raw(std::uint64_t count) {
  if (count > bytes_.size()) ok_ = false;
  if (!ok_) return {};
  const std::span<const std::uint8_t> taken = bytes_.first(static_cast<std::size_t>(count));
  bytes_ = bytes_.subspan(static_cast<std::size_t>(count));
  return taken;
}

}  // namespace fogsheet
