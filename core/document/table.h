// A table of a document: rows in the order the user gave them, in immutable chunks that neighbours in the history share.
// An edit copies one chunk and the list of chunks; every other row is shared with the table it was made from.
#pragma once

#include <algorithm>
#include <cstddef>
#include <functional>
#include <iterator>
#include <memory>
#include <utility>
#include <vector>

#include "core/base/check.h"

namespace fogsheet {

/// @tparam Row  a value with a member `id` and ==.
template <class Row>
class Table {
 public:
  using RowId = decltype(Row::id);

 private:
  // Some rows that stand together, never none, and the bounds of their ids: rows are found by looking into few chunks, and
  // there by halves where nobody has changed their order.
  struct Chunk {
    explicit Chunk(std::vector<Row> some) : rows(std::move(some)), least_id(rows.front().id), greatest_id(rows.front().id) {
      for (const Row& row : rows) {
        least_id = std::min(least_id, row.id);
        greatest_id = std::max(greatest_id, row.id);
      }
      ascending = std::is_sorted(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.id < b.id; });
    }
    bool may_hold(RowId id) const { return id >= least_id && id <= greatest_id; }

    const Row* find(RowId id) const {
      if (id.value < least_id.value || id.value > greatest_id.value) return nullptr;
      // Pointers and bare numbers: built for size, WebAssembly makes a call of every step of an iterator.
      const Row* begin = rows.data();
      const Row* end = begin + rows.size();
      const Row* found = ascending ? std::lower_bound(begin, end, id.value, [](const Row& row, auto wanted) { return row.id.value < wanted; })
                                   : std::find_if(begin, end, [&](const Row& row) { return row.id.value == id.value; });
      return found != end && found->id.value == id.value ? found : nullptr;
    }

    std::vector<Row> rows;
    RowId least_id, greatest_id;
    bool ascending = false;
  };

 public:

  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }

  /// The row of that id, or null. The pointer lives as long as any table that shares the row.
  const Row* find(RowId id) const {
    if (!chunks_) return nullptr;
    for (const ChunkPtr& chunk : *chunks_)
      if (const Row* row = chunk->find(id)) return row;
    return nullptr;
  }

  /// The row at a place in the user's order, in [0, size()).
  const Row& at(std::size_t place) const {
    SHEET_CHECK(place < size_, "a row past the table's end");
    for (const ChunkPtr& chunk : *chunks_) {
      if (place < chunk->rows.size()) return chunk->rows[place];
      place -= chunk->rows.size();
    }
    check_failed("place", "a table's size does not fit its chunks", __FILE__, __LINE__);
  }

  /// A table of these rows, in their order. For many rows at once: each `with` copies a chunk.
  [[nodiscard]] static Table of(std::vector<Row> rows) {
    if (rows.empty()) return Table();
    Chunks chunks;
    const std::size_t size = rows.size();
    for (std::size_t start = 0; start < size; start += k_chunk_rows) {
      const auto first = rows.begin() + static_cast<std::ptrdiff_t>(start);
      const auto last = rows.begin() + static_cast<std::ptrdiff_t>(std::min(start + k_chunk_rows, size));
      chunks.push_back(chunk_of({std::make_move_iterator(first), std::make_move_iterator(last)}));
    }
    return Table(std::move(chunks), size);
  }

  [[nodiscard]] Table with(Row row) const {
    Chunks chunks = chunks_ ? *chunks_ : Chunks{};
    Rows last;
    if (!chunks.empty() && chunks.back()->rows.size() < k_chunk_rows) {
      last = chunks.back()->rows;
      chunks.pop_back();
    }
    last.push_back(std::move(row));
    chunks.push_back(chunk_of(std::move(last)));
    return Table(std::move(chunks), size_ + 1);
  }

  /// The same table but for the row of that id, which must be there.
  [[nodiscard]] Table replaced(const Row& row) const {
    return edited(row.id, [&](Rows& rows, std::size_t place) { rows[place] = row; }, size_);
  }

  /// The same table without the row of that id, which must be there.
  [[nodiscard]] Table without(RowId id) const {
    return edited(id, [](Rows& rows, std::size_t place) { rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(place)); }, size_ - 1);
  }

  /// The same table without the rows for which `goes` holds. Chunks that lose none stay shared.
  template <class Goes>
  [[nodiscard]] Table without_all(Goes goes) const {
    if (!chunks_) return *this;
    Chunks kept;
    std::size_t size = 0;
    for (const ChunkPtr& chunk : *chunks_) {
      Rows rows = chunk->rows;
      std::erase_if(rows, goes);
      size += rows.size();
      if (rows.size() == chunk->rows.size()) kept.push_back(chunk);
      else if (!rows.empty()) kept.push_back(chunk_of(std::move(rows)));
    }
    if (size == size_) return *this;
    return size == 0 ? Table() : Table(std::move(kept), size);
  }

  /// The same table with a row put in at a place of the user's order, in [0, size()]; what stood there comes after it.
  [[nodiscard]] Table inserted(std::size_t place, Row row) const {
    SHEET_CHECK(place <= size_, "a row put in past the table's end");
    if (place == size_) return with(std::move(row));
    Chunks chunks = *chunks_;
    std::size_t c = 0;
    while (place >= chunks[c]->rows.size()) place -= chunks[c++]->rows.size();
    Rows rows = chunks[c]->rows;
    rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(place), std::move(row));
    if (rows.size() > k_chunk_rows) {
      const auto half = rows.begin() + static_cast<std::ptrdiff_t>(rows.size() / 2);
      chunks.insert(chunks.begin() + static_cast<std::ptrdiff_t>(c) + 1, chunk_of({half, rows.end()}));
      rows.erase(half, rows.end());
    }
    chunks[c] = chunk_of(std::move(rows));
    return Table(std::move(chunks), size_ + 1);
  }

  /// The same rows with the row of that id, which must be there, moved so that it stands at a place in [0, size()).
  [[nodiscard]] Table moved(RowId id, std::size_t place) const {
    const Row* row = find(id);
    SHEET_CHECK(row != nullptr, "a move of a row that is not in the table");
    return without(id).inserted(place, *row);
  }

  /// Where the row of that id stands, in [0, size()); size() when there is none.
  std::size_t place_of(RowId id) const {
    std::size_t place = 0;
    for (const Row& row : *this) {
      if (row.id == id) break;
      ++place;
    }
    return place;
  }

  /// A row that one of two tables does not share with the other, and where it stands.
  struct RowApart {
    const Row* row;
    std::size_t place;          // among all rows of its table
    std::size_t shared_before;  // how many rows that both share stand before it
  };
  struct Apart {
    std::vector<RowApart> here, there;
  };

  /// The rows of two tables that are not in chunks which both share, in their orders. Rows may be in both lists, and equal.
  static Apart apart(const Table& here, const Table& there) {
    if (here.chunks_ == there.chunks_) return {};
    const Chunks none;
    const Chunks& a = here.chunks_ ? *here.chunks_ : none;
    const Chunks& b = there.chunks_ ? *there.chunks_ : none;
    std::size_t start = 0, ends = 0;  // chunks in common at the start and at the end
    while (start < std::min(a.size(), b.size()) && a[start] == b[start]) ++start;
    while (ends < std::min(a.size(), b.size()) - start && a[a.size() - 1 - ends] == b[b.size() - 1 - ends]) ++ends;
    std::vector<std::pair<const Chunk*, std::size_t>> between;  // of `here`, by address
    for (std::size_t c = start; c < a.size() - ends; ++c) between.emplace_back(a[c].get(), c);
    std::sort(between.begin(), between.end());
    std::vector<bool> shared_a(a.size(), true), shared_b(b.size(), true);
    for (std::size_t c = start; c < a.size() - ends; ++c) shared_a[c] = false;
    std::size_t next = start;  // shared chunks stand in the same order in both
    for (std::size_t c = start; c < b.size() - ends; ++c) {
      const auto found = std::lower_bound(between.begin(), between.end(), std::pair(b[c].get(), std::size_t{0}));
      shared_b[c] = found != between.end() && found->first == b[c].get() && found->second >= next;
      if (!shared_b[c]) continue;
      shared_a[found->second] = true;
      next = found->second + 1;
    }
    return {rows_apart(a, shared_a), rows_apart(b, shared_b)};
  }

  class Iterator {
   public:
    using iterator_category = std::forward_iterator_tag;
    using value_type = Row;
    using difference_type = std::ptrdiff_t;
    using pointer = const Row*;
    using reference = const Row&;

    Iterator() = default;
    reference operator*() const { return (*chunks_)[chunk_]->rows[row_]; }
    pointer operator->() const { return &**this; }
    Iterator& operator++() {
      if (++row_ == (*chunks_)[chunk_]->rows.size()) {
        row_ = 0;
        ++chunk_;
      }
      return *this;
    }
    Iterator operator++(int) {
      Iterator before = *this;
      ++*this;
      return before;
    }
    bool operator==(const Iterator&) const = default;

   private:
    friend class Table;
    Iterator(const std::vector<std::shared_ptr<const Chunk>>* chunks, std::size_t chunk) : chunks_(chunks), chunk_(chunk) {}
    const std::vector<std::shared_ptr<const Chunk>>* chunks_ = nullptr;
    std::size_t chunk_ = 0;
    std::size_t row_ = 0;
  };

  Iterator begin() const { return chunks_ ? Iterator(chunks_.get(), 0) : Iterator(); }
  Iterator end() const { return chunks_ ? Iterator(chunks_.get(), chunks_->size()) : Iterator(); }

  bool operator==(const Table& other) const {
    if (chunks_ == other.chunks_) return true;
    if (size_ != other.size_) return false;
    Iterator b = other.begin();
    for (const Row& row : *this) {
      if (&row != &*b && !(row == *b)) return false;
      ++b;
    }
    return true;
  }

 private:
  using Rows = std::vector<Row>;
  using ChunkPtr = std::shared_ptr<const Chunk>;
  using Chunks = std::vector<ChunkPtr>;

  // Larger chunks copy more an edit, smaller ones make the list of chunks longer; 64 balances them near 10 000 rows.
  static constexpr std::size_t k_chunk_rows = 64;

  static ChunkPtr chunk_of(Rows rows) { return std::make_shared<const Chunk>(std::move(rows)); }

  static std::vector<RowApart> rows_apart(const Chunks& chunks, const std::vector<bool>& shared) {
    std::vector<RowApart> rows;
    std::size_t place = 0, shared_before = 0;
    for (std::size_t c = 0; c < chunks.size(); ++c) {
      if (shared[c]) {
        place += chunks[c]->rows.size();
        shared_before += chunks[c]->rows.size();
        continue;
      }
      for (const Row& row : chunks[c]->rows) rows.push_back({&row, place++, shared_before});
    }
    return rows;
  }

  explicit Table(Chunks chunks, std::size_t size) : chunks_(std::make_shared<const Chunks>(std::move(chunks))), size_(size) {}

 public:
  Table() = default;

 private:
  template <class Edit>
  Table edited(RowId id, Edit edit, std::size_t size) const {
    SHEET_CHECK(chunks_ != nullptr, "an edit of a row that is not in the table");
    Chunks chunks = *chunks_;
    for (std::size_t c = 0; c < chunks.size(); ++c) {
      if (!chunks[c]->may_hold(id)) continue;
      for (std::size_t place = 0; place < chunks[c]->rows.size(); ++place) {
        if (chunks[c]->rows[place].id != id) continue;
        Rows rows = chunks[c]->rows;
        edit(rows, place);
        if (rows.empty()) chunks.erase(chunks.begin() + static_cast<std::ptrdiff_t>(c));
        else chunks[c] = chunk_of(std::move(rows));
        if (chunks.empty()) return Table();
        return Table(std::move(chunks), size);
      }
    }
    check_failed("id", "an edit of a row that is not in the table", __FILE__, __LINE__);
  }

  std::shared_ptr<const Chunks> chunks_;  // null when there are no rows
  std::size_t size_ = 0;
};

}  // namespace fogsheet
