// What goes from this sheet to somebody else, and what came from somebody else and waits for a word.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/document/document.h"

namespace fogsheet {

/// Longer addresses are cut or refused on their way by mail and messengers. Common practice, no source: that they get through
/// is usual up to some 2 000 characters.
inline constexpr std::size_t k_most_link_characters = 2'000;

/// How white a code's white is in a dark palette, in percent.
struct CodeLight {
  const char* name;
  int percent;
};
inline constexpr CodeLight k_code_lights[] = {{"full", 100}, {"less", 60}, {"little", 35}};

/// A link as a code to be held before another device's camera.
struct CodeShown {
  std::string link;                   // that it is of, or is being made of
  std::vector<std::uint8_t> modules;  // exchange/qr_code.h; none while it is being made
  bool failed = false;                // what makes it did not come
  std::string light = "full";         // one of k_code_lights
};

struct Sending {
  bool link_copied = true;  // that is what was put on the clipboard last, else a mark's place
  bool link_shown = false;  // it could not be copied, and stands there to be copied by hand
  CodeShown code;
  std::optional<Document> arrived;  // by a link, while a sheet of the user's own was in hand
};

}  // namespace fogsheet
