// What GPX 1.1 allows: which elements in which order, which attributes, which values. The reader takes more than that, and
// tells where a file departs from it. Source: the schema of namespace http://www.topografix.com/GPX/1/1; what stands in
// `author`, `copyright`, `email` and `link` from memory of it.
#pragma once

#include <cstddef>
#include <memory>
#include <string_view>
#include <vector>

#include "core/exchange/xml.h"

namespace fogsheet {

inline constexpr std::string_view k_gpx_space = "http://www.topografix.com/GPX/1/1";

/// Each element, with what may stand in it; and all of them.
struct GpxElement;
struct GpxSchema;

/// Follows a document from element to element.
class GpxRules {
 public:
  GpxRules();
  ~GpxRules();

  void begin();
  /// @return whether the element, its attributes and its place are as they should be.
  bool open(XmlName name, const std::vector<XmlAttribute>& attributes);
  /// @param text all that stood in the element itself.
  bool close(std::string_view text);

 private:
  struct Frame {
    const GpxElement* element = nullptr;  // null: nothing is said of what is in there
    std::size_t child = 0;                // the place in its children that was reached
    bool child_taken = false;             // one of them has stood there
  };
  std::unique_ptr<const GpxSchema> schema_;
  std::vector<Frame> frames_;
};

}  // namespace fogsheet
