#include "core/document/integrity.h"

#include <algorithm>
#include <cstdint>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace fogsheet {
namespace {

Problem bad(const char* table, std::size_t index) {
  return {.fault = Fault::text_section, .texts = {table}, .numbers = {static_cast<double>(index)}};
}

// A row's id, and the row's place for naming the one that is wrong.
struct Owner {
  std::uint32_t id;
  const char* table;
  std::size_t index;
};

template <class Row>
void collect_ids(const Table<Row>& table, const char* name, std::vector<Owner>& owners) {
  std::size_t index = 0;
  for (const Row& row : table) owners.push_back({row.id.value, name, index++});
}

Result<Done> check_ids(const Document& document) {
  std::vector<Owner> owners;
  collect_ids(document.marks, "marks", owners);
  collect_ids(document.legs, "legs", owners);
  collect_ids(document.roses, "roses", owners);
  collect_ids(document.text_notes, "text notes", owners);
  std::stable_sort(owners.begin(), owners.end(), [](const Owner& a, const Owner& b) { return a.id < b.id; });
  for (std::size_t i = 0; i < owners.size(); ++i) {
    const bool taken = i > 0 && owners[i].id == owners[i - 1].id;
    if (taken || owners[i].id == 0 || owners[i].id >= document.next_id) return bad(owners[i].table, owners[i].index);
  }
  return Done{};
}

Result<Done> check_legs(const Document& document) {
  std::vector<std::pair<std::uint32_t, GridPosition>> places;
  for (const Mark& mark : document.marks) places.emplace_back(mark.id.value, mark.at);
  std::sort(places.begin(), places.end());
  const auto place_of = [&](MarkId id) -> const GridPosition* {
    const auto found = std::lower_bound(places.begin(), places.end(), std::pair(id.value, GridPosition{INT32_MIN, INT32_MIN}));
    return found != places.end() && found->first == id.value ? &found->second : nullptr;
  };
  std::vector<std::tuple<MarkId, MarkId, std::size_t>> ends;
  std::size_t index = 0;
  for (const Leg& leg : document.legs) {
    const GridPosition* from = place_of(leg.from);
    const GridPosition* to = place_of(leg.to);
    if (!from || !to || *from == *to) return bad("legs", index);
    ends.emplace_back(leg.from, leg.to, index++);
  }
  std::sort(ends.begin(), ends.end());
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const auto& [from, to, place] = ends[i];
    if (from == std::get<0>(ends[i - 1]) && to == std::get<1>(ends[i - 1])) return bad("legs", place);
  }
  return Done{};
}

template <class Row>
Result<Done> check_places(const Table<Row>& table, std::size_t most, const Projection& projection, const char* name) {
  if (table.size() > most) return bad(name, most);
  std::size_t index = 0;
  for (const Row& row : table) {
    if (!lies_on_sheet(projection, row.at, k_sheet_slack_mm)) return bad(name, index);
    ++index;
  }
  return Done{};
}

}  // namespace

Result<Done> check_document(const Document& document) {
  const Projection projection = projection_of(document);
  if (document.legs.size() > k_most_legs) return bad("legs", k_most_legs);
  if (document.next_id == 0 || document.next_id > k_most_id) return bad("next id", 0);
  for (const Result<Done>& part : {check_places(document.marks, k_most_marks, projection, "marks"),
                                   check_places(document.roses, k_most_roses, projection, "roses"),
                                   check_places(document.text_notes, k_most_text_notes, projection, "text notes"),
                                   check_ids(document), check_legs(document)})
    if (!part) return part;
  return Done{};
}

}  // namespace fogsheet
