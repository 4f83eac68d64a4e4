// XML as a run of events, by Expat: elements with their attributes, and text. A document type of a file's own is refused, so
// that nothing outside it is asked for and nothing in it grows; depth is bounded, and so is each text handed out.
#pragma once

#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fogsheet {

struct XmlName {
  std::string_view space;  // of its namespace; of its prefix, where the file uses prefixes it never declared
  std::string_view local;

  bool operator==(const XmlName&) const = default;
};

struct XmlAttribute {
  XmlName name;
  std::string_view value;
};

class XmlEvents {
 public:
  virtual ~XmlEvents() = default;
  /// All anew: what was handed over so far is to be forgotten.
  virtual void begin() = 0;
  /// @param line of the file, from 1. @return false to stop there.
  virtual bool open(XmlName name, const std::vector<XmlAttribute>& attributes, std::size_t line) = 0;
  virtual void text(std::string_view piece) = 0;
  virtual void close() = 0;
};

/// What departs from the standard and is read all the same.
struct XmlOddities {
  bool prefix_undeclared = false;
  bool encoding_untold = false;  // neither UTF-8 nor what it says: read as Windows-1252
};

/// In UTF-8, UTF-16, ISO 8859-1, US-ASCII or Windows-1252, as the file says.
/// Faults: file_broken, file_too_deep, file_own_types, file_encoding. One that was stopped is none.
Result<XmlOddities> read_xml(std::string_view bytes, XmlEvents& events);

}  // namespace fogsheet
