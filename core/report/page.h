// A PDF written from top to bottom: texts wrap and flow over pages, tables keep their columns, pictures stand in rows.
// One document, one thread. Lengths are points (1/72 inch), y runs down from the top margin.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/report/report.h"

namespace cotter {

enum class Look { body, small, bold, heading, title };

struct Column {
    double share = 1;  // of the page's width
    Look look = Look::body;
};

class PdfPages {
public:
    [[nodiscard]] static Result<std::unique_ptr<PdfPages>> create(const ReportInputs& inputs);
    ~PdfPages();

    void text(Look look, const std::string& text);
    void gap(double points);
    void rule();
    // One row of a table; cells wrap. Stays together on a page.
    void row(const std::vector<Column>& columns, const std::vector<std::string>& cells);
    // A heading that keeps at least `room` points with it.
    void heading(const std::string& text, double room = 90);
    // A filled or outlined shape that stands for a grade at the start of the next row.
    void grade_mark(Grade grade);
    void new_page();
    // A picture with two lines below it, two beside each other.
    void picture(const ReportPicture& picture, const std::string& caption);
    void end_pictures();  // the next text begins below the row of pictures

    [[nodiscard]] Result<Bytes> finish();  // adds the footers

private:
    struct State;
    explicit PdfPages(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace cotter
