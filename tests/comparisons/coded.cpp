// Links of seeded routes as QR codes, for other programs to read: a line "LINK SIDE MODULES" each, modules as 0 and 1; a link that is
// too long for a code has a side of 0.
#include <cstdio>
#include <string>

#include "core/exchange/qr_code.h"
#include "core/formats/document_text.h"
#include "tests/bench/link_routes.h"

int main() {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const std::string link = "https://example.org/sheets/#" + fogsheet::encode_document(fogsheet::seeded_route(seed, static_cast<int>(2 + seed * 3 / 2)));
    const std::vector<std::uint8_t> code = fogsheet::qr_code(link);
    std::string modules;
    for (std::size_t i = 1; i < code.size(); ++i) modules += code[i] != 0 ? '1' : '0';
    std::printf("%s %d %s\n", link.c_str(), code.empty() ? 0 : code[0], modules.c_str());
  }
}
