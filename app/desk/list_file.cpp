// See list_file.h.
#include "app/desk/list_file.h"

#include "core/quote/csv_text.h"
#include "core/report/list_pdf.h"

namespace cotter::desk {

namespace {

constexpr std::uint64_t kMostFont = 16u << 20u;

class WriteFile final : public Task {
public:
    WriteFile(Files& files, std::string path, std::function<Result<Bytes>()> make, std::function<void(Result<>)> told)
        : files_(files), path_(std::move(path)), make_(std::move(make)), told_(std::move(told)) {}

    bool step() override {
        result_ = write();
        return true;
    }
    void done() override { told_(std::move(result_)); }

private:
    Result<> write() {
        COTTER_ASSIGN(const Bytes bytes, make_());
        COTTER_TRY(files_.make_folders(parent_folder(path_)));
        return replace_file(files_, path_, bytes);
    }

    Files& files_;
    std::string path_;
    std::function<Result<Bytes>()> make_;
    std::function<void(Result<>)> told_;
    Result<> result_;
};

}  // namespace

Result<Bytes> list_as_pdf(Files& files, const ListOnPaper& list) {
    ListPaper paper;
    COTTER_ASSIGN(const Bytes font, read_file(files, join_path(list.share, "fonts/DejaVuSans.ttf"), kMostFont));
    COTTER_ASSIGN(const Bytes bold, read_file(files, join_path(list.share, "fonts/DejaVuSans-Bold.ttf"), kMostFont));
    paper.font = font;
    paper.font_bold = bold;
    paper.title = list.title;
    paper.under = list.under;
    paper.empty = list.empty;
    paper.at = list.at;
    paper.software = list.software;
    for (const TableColumn& c : list.columns)
        if (c.drawn()) paper.columns.push_back({c.title, c.least / 100.0 + c.share});
    for (const TableRow& row : list.rows) {
        std::vector<ListCell> cells;
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            if (list.columns[i].drawn()) cells.push_back({row.cells[i].text, row.cells[i].grade});
        paper.rows.push_back(std::move(cells));
    }
    return list_pdf(paper);
}

std::string list_as_csv(const ListOnPaper& list) {
    std::string out;
    std::vector<std::string> head;
    for (const TableColumn& c : list.columns)
        if (c.drawn()) head.push_back(c.title);
    add_csv_line(out, head);
    for (const TableRow& row : list.rows) {
        std::vector<std::string> cells;
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            if (list.columns[i].drawn()) cells.push_back(guarded_text(row.cells[i].text));
        add_csv_line(out, cells);
    }
    return out;
}

std::unique_ptr<Task> write_file(Files& files, std::string path, std::function<Result<Bytes>()> make,
                                 std::function<void(Result<>)> told) {
    return std::make_unique<WriteFile>(files, std::move(path), std::move(make), std::move(told));
}

}  // namespace cotter::desk
