// Whether a text is well-formed XML, as far as figures need it: one root, elements closed in order, attributes quoted and
// named once, no character that must be escaped, no entity but XML's own. Source: XML 1.0, 5th edition, sections 2 and 4.
#pragma once

#include <string_view>

namespace fogsheet {

bool is_well_formed_xml(std::string_view text);

}  // namespace fogsheet
