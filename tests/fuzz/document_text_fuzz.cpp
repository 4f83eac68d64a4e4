// Texts from outside: whatever they hold, decoding gives a document or a reason; a document that was believed is written
// as a text that gives it again. Some inputs are texts; others get a right checksum, so that
// what lies behind it is reached, as sections or as the bytes of a packed one.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

#include "core/formats/base64url.h"
#include "core/formats/bytes.h"
#include "core/formats/crc32.h"
#include "core/formats/document_sections.h"
#include "core/formats/document_text.h"

using namespace fogsheet;

namespace {

std::string with_checksum(std::vector<std::uint8_t> bytes) {
  const std::uint32_t checksum = crc32(bytes);
  for (int shift = 0; shift < 32; shift += 8) bytes.push_back(static_cast<std::uint8_t>(checksum >> shift));
  return "1:" + base64url_encode(bytes);
}

std::string packed(const std::uint8_t* data, std::size_t size) {
  ByteWriter section;
  section.whole(static_cast<std::uint64_t>(Section::packed) << 1);
  section.whole(size);
  section.raw({data, size});
  return with_checksum(section.bytes());
}

void must_come_back(const std::string& text) {
  const Result<Document> decoded = decode_document(text);
  if (!decoded) return;
  const Result<Document> again = decode_document(encode_document(*decoded));
  if (!again || !(*again == *decoded)) std::abort();
}

}  // namespace

// The first byte says what an input is.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  if (data[0] & 1) must_come_back(std::string(data + 1, data + size));
  else if (data[0] & 2) must_come_back(packed(data + 1, size - 1));
  else must_come_back(with_checksum({data + 1, data + size}));
  return 0;
}
