// See list.h.
#include "app/desk/list.h"

namespace cotter::desk {

namespace {
constexpr std::size_t kMostPages = 20;
}

void PagedRows::start(std::size_t size) {
    size_ = size;
    pages_.clear();
}

void PagedRows::put(std::size_t page, std::vector<TableRow> rows) {
    pages_[page] = std::move(rows);
    while (pages_.size() > kMostPages) {
        const bool low = page - pages_.begin()->first > pages_.rbegin()->first - page;
        pages_.erase(low ? pages_.begin() : std::prev(pages_.end()));
    }
}

const TableRow* PagedRows::row(std::size_t at) const {
    const auto page = pages_.find(at / kPage);
    if (page == pages_.end() || at % kPage >= page->second.size()) return nullptr;
    return &page->second[at % kPage];
}

std::vector<std::size_t> PagedRows::pages() const {
    std::vector<std::size_t> out;
    for (const auto& [page, rows] : pages_) out.push_back(page);
    return out;
}

std::vector<std::size_t> PagedRows::missing(const TableModel::Span& span) const {
    std::vector<std::size_t> out;
    if (span.to <= span.from || span.from >= size_) return out;
    for (std::size_t page = span.from / kPage; page <= (std::min(span.to, size_) - 1) / kPage; ++page)
        if (!pages_.contains(page)) out.push_back(page);
    return out;
}

const TableRows& List::table() const {
    if (const auto* kept = std::get_if<KeptRows>(&rows)) return *kept;
    return std::get<PagedRows>(rows);
}

void List::keep(std::vector<TableRow> all) {
    KeptRows kept(std::move(all));
    kept.sort(sort);
    kept.narrow(words);
    rows = std::move(kept);
    ++made;
}

void List::sort_by(const TableSort& by) {
    sort = by;
    std::get<KeptRows>(rows).sort(sort);
    ++made;
}

void List::narrow(const std::string& to) {
    words = to;
    std::get<KeptRows>(rows).narrow(words);
    ++made;
}

List list_of(std::string name, std::string title, std::string empty, Columns columns) {
    List list;
    list.name = std::move(name);
    list.title = std::move(title);
    list.empty = std::move(empty);
    list.columns = std::move(columns);
    return list;
}

}  // namespace cotter::desk
