#include "core/base/typing_slips.h"

#include "core/base/entry_tokens.h"

namespace fogsheet {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string with_figures_for_letters(std::string_view text) {
  std::string corrected(text);
  const auto is_figure_at = [&](std::size_t at) { return at < corrected.size() && (is_digit(corrected[at]) || corrected[at] == '.'); };
  for (std::size_t i = 0; i < corrected.size(); ++i) {
    if (!is_figure_at(i + 1) && !(i > 0 && is_figure_at(i - 1))) continue;
    if (corrected[i] == 'O' || corrected[i] == 'o') corrected[i] = '0';
    if (corrected[i] == 'l' || corrected[i] == 'I') corrected[i] = '1';
  }
  return corrected;
}

enum class Points { all, first_of_each_number };

// Of numbers with two points or more.
std::string with_blanks_for_points(std::string_view text, Points which) {
  std::string corrected(text);
  for (std::size_t begin = 0; begin < text.size();) {
    std::size_t end = begin;
    std::size_t points = 0;
    for (; end < text.size() && (is_digit(text[end]) || text[end] == '.'); ++end) points += text[end] == '.' ? 1 : 0;
    if (points >= 2) {
      for (std::size_t i = begin; i < end; ++i) {
        if (text[i] != '.') continue;
        corrected[i] = ' ';
        if (which == Points::first_of_each_number) break;
      }
    }
    begin = end + 1;
  }
  return corrected;
}

}  // namespace

std::vector<std::string> likely_corrections(std::string_view text) {
  std::vector<std::string> corrections;
  if (text.size() > k_longest_entry) return corrections;
  for (const std::string& corrected :
       {with_figures_for_letters(text), with_blanks_for_points(text, Points::all), with_blanks_for_points(text, Points::first_of_each_number)})
    if (corrected != text) corrections.push_back(corrected);
  return corrections;
}

}  // namespace fogsheet
