// See work_rules.h.
#include "app/session/work_data.h"

#include <utility>

namespace cotter {

namespace {

constexpr std::uint64_t kLargestPart = 1 << 20;  // bytes of a file

}  // namespace

WorkData::WorkData(Files& files, const std::string& share) : files_(files), folder_(join_path(share, "procedures")) {}

const WorkData::Data& WorkData::data() const {
    if (data_) return *data_;
    data_.emplace();
    const auto into = [&](auto& out, auto read) {
        if (read)
            out = std::move(*read);
        else
            data_->trouble = read.error();
    };
    const auto text_of = [&](const char* name) { return read_file(files_, join_path(folder_, name), kLargestPart); };
    into(data_->book, load_work_book(files_, folder_));
    into(data_->fluids, text_of("fluids.json").and_then([](const Bytes& b) { return fluids_from_json(as_text(b)); }));
    into(data_->rechecks,
         text_of("rechecks.json").and_then([](const Bytes& b) { return rechecks_from_json(as_text(b)); }));
    return *data_;
}

}  // namespace cotter
