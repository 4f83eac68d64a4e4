// A table of a document: rows in the order the user gave them, in immutable chunks that neighbours in the history share.
// An edit copies one chunk and the list of chunks; every other row is shared with the table it was made from.
#pragma once

#include <algorithm>
#include <cstddef>
#include <functional>
#include <iterator>
#include <memory>
#include <vector>

#include "core/base/check.h"

namespace fogsheet {

/// @tparam Row  a value with a member `id` and ==.
template <class Row>
class Table {
 public:
  using RowId = decltype(Row::id);

  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }

  /// The row of that id, or null. The pointer lives as long as any table that shares the row.
  const Row* find(RowId id) const {
    if (!chunks_) return nullptr;
    for (const ChunkPtr& chunk : *chunks_)
      for (const Row& row : *chunk)
        if (row.id == id) return &row;
    return nullptr;
  }

  /// The row at a place in the user's order, in [0, size()).
  const Row& at(std::size_t place) const {
    SHEET_CHECK(place < size_, "a row past the table's end");
    for (const ChunkPtr& chunk : *chunks_) {
      if (place < chunk->size()) return (*chunk)[place];
      place -= chunk->size();
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
      chunks.push_back(std::make_shared<const Chunk>(std::make_move_iterator(first), std::make_move_iterator(last)));
    }
    return Table(std::move(chunks), size);
  }

  [[nodiscard]] Table with(Row row) const {
    Chunks chunks = chunks_ ? *chunks_ : Chunks{};
    Chunk last;
    if (!chunks.empty() && chunks.back()->size() < k_chunk_rows) {
      last = *chunks.back();
      chunks.pop_back();
    }
    last.push_back(std::move(row));
    chunks.push_back(std::make_shared<const Chunk>(std::move(last)));
    return Table(std::move(chunks), size_ + 1);
  }

  /// The same table but for the row of that id, which must be there.
  [[nodiscard]] Table replaced(const Row& row) const {
    return edited(row.id, [&](Chunk& chunk, std::size_t place) { chunk[place] = row; }, size_);
  }

  /// The same table without the row of that id, which must be there.
  [[nodiscard]] Table without(RowId id) const {
    return edited(id, [](Chunk& chunk, std::size_t place) { chunk.erase(chunk.begin() + static_cast<std::ptrdiff_t>(place)); }, size_ - 1);
  }

  /// The same table without the rows for which `goes` holds. Chunks that lose none stay shared.
  template <class Goes>
  [[nodiscard]] Table without_all(Goes goes) const {
    if (!chunks_) return *this;
    Chunks kept;
    std::size_t size = 0;
    for (const ChunkPtr& chunk : *chunks_) {
      Chunk rows = *chunk;
      std::erase_if(rows, goes);
      size += rows.size();
      if (rows.size() == chunk->size()) kept.push_back(chunk);
      else if (!rows.empty()) kept.push_back(std::make_shared<const Chunk>(std::move(rows)));
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
    while (place >= chunks[c]->size()) place -= chunks[c++]->size();
    Chunk chunk = *chunks[c];
    chunk.insert(chunk.begin() + static_cast<std::ptrdiff_t>(place), std::move(row));
    if (chunk.size() > k_chunk_rows) {
      const auto half = chunk.begin() + static_cast<std::ptrdiff_t>(chunk.size() / 2);
      chunks.insert(chunks.begin() + static_cast<std::ptrdiff_t>(c) + 1, std::make_shared<const Chunk>(half, chunk.end()));
      chunk.erase(half, chunk.end());
    }
    chunks[c] = std::make_shared<const Chunk>(std::move(chunk));
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

  class Iterator {
   public:
    using iterator_category = std::forward_iterator_tag;
    using value_type = Row;
    using difference_type = std::ptrdiff_t;
    using pointer = const Row*;
    using reference = const Row&;

    Iterator() = default;
    reference operator*() const { return (*(*chunks_)[chunk_])[row_]; }
    pointer operator->() const { return &**this; }
    Iterator& operator++() {
      if (++row_ == (*chunks_)[chunk_]->size()) {
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
    Iterator(const std::vector<std::shared_ptr<const std::vector<Row>>>* chunks, std::size_t chunk) : chunks_(chunks), chunk_(chunk) {}
    const std::vector<std::shared_ptr<const std::vector<Row>>>* chunks_ = nullptr;
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
  using Chunk = std::vector<Row>;
  using ChunkPtr = std::shared_ptr<const Chunk>;
  using Chunks = std::vector<ChunkPtr>;

  // Larger chunks copy more an edit, smaller ones make the list of chunks longer; 64 balances them near 10 000 rows.
  static constexpr std::size_t k_chunk_rows = 64;

  explicit Table(Chunks chunks, std::size_t size) : chunks_(std::make_shared<const Chunks>(std::move(chunks))), size_(size) {}

 public:
  Table() = default;

 private:
  template <class Edit>
  Table edited(RowId id, Edit edit, std::size_t size) const {
    SHEET_CHECK(chunks_ != nullptr, "an edit of a row that is not in the table");
    Chunks chunks = *chunks_;
    for (std::size_t c = 0; c < chunks.size(); ++c)
      for (std::size_t place = 0; place < chunks[c]->size(); ++place)
        if ((*chunks[c])[place].id == id) {
          Chunk chunk = *chunks[c];
          edit(chunk, place);
          if (chunk.empty()) chunks.erase(chunks.begin() + static_cast<std::ptrdiff_t>(c));
          else chunks[c] = std::make_shared<const Chunk>(std::move(chunk));
          if (chunks.empty()) return Table();
          return Table(std::move(chunks), size);
        }
    check_failed("id", "an edit of a row that is not in the table", __FILE__, __LINE__);
  }

  std::shared_ptr<const Chunks> chunks_;  // null when there are no rows
  std::size_t size_ = 0;
};

}  // namespace fogsheet
