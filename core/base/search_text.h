// What a user types to find something by: words, each found anywhere in what is searched, great and small letters alike.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fogsheet {

/// Puts small letters for great ones in `text`, UTF-8: Latin (basic, Latin-1, Extended-A), Greek and Cyrillic, as long as
/// before; the rest as it is.
/// Source: Unicode 15, CaseFolding.txt, simple foldings of one and two bytes (dotted and dotless i left alone).
void fold(std::string& text);

class Search {
 public:
  explicit Search(std::string_view typed);

  bool is_empty() const { return words_.empty(); }

  /// One more text of what is searched. Once each word has been found in one of them, all_found() is true.
  void look_in(std::string_view text);
  bool all_found() const { return missing_ == 0; }
  /// For the next thing.
  void begin_anew();

 private:
  struct Word {
    std::string text;
    bool is_found = false;
  };
  std::vector<Word> words_;
  std::size_t missing_ = 0;
  std::string folded_;
};

}  // namespace fogsheet
