// The only file that includes zlib.
#include "core/packet/deflate.h"

#include <zlib.h>

#include "core/packet/zip_format.h"

namespace cotter {

Bytes deflate_bytes(ByteView bytes) {
    z_stream stream{};
    deflateInit2(&stream, zip::kOurLevel, Z_DEFLATED, -MAX_WBITS, 9, Z_DEFAULT_STRATEGY);
    Bytes out(deflateBound(&stream, static_cast<uLong>(bytes.size())));
    stream.next_in = const_cast<Bytef*>(bytes.data());
    stream.avail_in = static_cast<uInt>(bytes.size());
    stream.next_out = out.data();
    stream.avail_out = static_cast<uInt>(out.size());
    deflate(&stream, Z_FINISH);
    out.resize(stream.total_out);
    deflateEnd(&stream);
    return out;
}

struct Inflater::State {
    z_stream stream{};
    std::uint64_t left;
    bool ended = false;
    bool surplus = false;
    Bytes buffer = Bytes(64 * 1024);
    explicit State(std::uint64_t size) : left(size) { inflateInit2(&stream, -MAX_WBITS); }
    State(const State&) = delete;
    State& operator=(const State&) = delete;
    ~State() { inflateEnd(&stream); }
};

Inflater::Inflater(std::uint64_t size) : state_(std::make_unique<State>(size)) {}
Inflater::~Inflater() = default;

Result<> Inflater::add(ByteView packed, const std::function<void(ByteView)>& sink) {
    State& s = *state_;
    if (packed.empty()) return {};
    if (s.ended) return fail(Errc::damaged, "there are bytes behind the end of its compressed data");
    s.stream.next_in = const_cast<Bytef*>(packed.data());
    s.stream.avail_in = static_cast<uInt>(packed.size());
    do {
        s.stream.next_out = s.buffer.data();
        s.stream.avail_out = static_cast<uInt>(s.buffer.size());
        const int status = inflate(&s.stream, Z_NO_FLUSH);
        if (status != Z_OK && status != Z_STREAM_END && status != Z_BUF_ERROR)
            return fail(Errc::damaged, "its compressed data is broken");
        const std::size_t got = s.buffer.size() - s.stream.avail_out;
        if (got > s.left) return fail(Errc::refused, "it unpacks to more than it declares");
        s.left -= got;
        if (got > 0) sink(ByteView(s.buffer).first(got));
        s.ended = status == Z_STREAM_END;
    } while (!s.ended && (s.stream.avail_in > 0 || s.stream.avail_out == 0));
    s.surplus = s.stream.avail_in > 0;
    return {};
}

Result<> Inflater::finish() {
    if (!state_->ended) return fail(Errc::damaged, "its compressed data is cut off");
    if (state_->left != 0) return fail(Errc::damaged, "it unpacks to less than it declares");
    if (state_->surplus) return fail(Errc::damaged, "there are bytes behind the end of its compressed data");
    return {};
}

}  // namespace cotter
