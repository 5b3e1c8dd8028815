#include "app/photo/jpeg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <csetjmp>
#include <cstdio>  // jpeglib.h wants FILE
#include <cstdlib>
#include <jerror.h>
#include <jpeglib.h>
#include <memory>

namespace sillwalk::app {

using engine::bad_input;
using engine::Result;

namespace {

/// libjpeg reports by function pointer; a fatal error leaves by longjmp to guarded().
struct Report {
    jpeg_error_mgr manager{};
    std::jmp_buf jump{};
    bool damaged = false, too_many_scans = false;
    int most_scans = 0;
    char message[JMSG_LENGTH_MAX] = "";

    Report() {
        jpeg_std_error(&manager);
        manager.error_exit = [](j_common_ptr info) {
            Report& report = of(info);
            info->err->format_message(info, report.message);
            std::longjmp(report.jump, 1);
        };
        manager.emit_message = [](j_common_ptr info, int level) {
            // Bytes between two segments are common and do no harm.
            if (level < 0 && info->err->msg_code != JWRN_EXTRANEOUS_DATA) of(info).damaged = true;
        };
        manager.output_message = [](j_common_ptr) {};
    }
    static Report& of(j_common_ptr info) { return *static_cast<Report*>(info->client_data); }
};

/// False where libjpeg gave up. `work` may call libjpeg only and own nothing: it may be left in its middle.
template <class Work>
bool guarded(Report& report, const Work& work) {
    if (setjmp(report.jump) != 0) return false;
    work();
    return true;
}

struct Decoder {
    Report report;
    jpeg_decompress_struct info{};
    jpeg_progress_mgr progress{};

    Decoder() {
        info.err = &report.manager;
        info.client_data = &report;
    }
    ~Decoder() { jpeg_destroy_decompress(&info); }
    Decoder(const Decoder&) = delete;
    Decoder& operator=(const Decoder&) = delete;

    bool read_header(std::string_view jpeg, const PhotoLimits& limits) {
        return guarded(report, [&] {
            jpeg_create_decompress(&info);
            info.mem->max_memory_to_use = limits.working_bytes;
            jpeg_mem_src(&info, reinterpret_cast<const unsigned char*>(jpeg.data()),
                         static_cast<unsigned long>(jpeg.size()));
            jpeg_read_header(&info, TRUE);
        });
    }
    bool start(unsigned part) {
        return guarded(report, [&] {
            info.scale_num = 1;
            info.scale_denom = part;
            info.out_color_space = JCS_RGB;
            jpeg_start_decompress(&info);
        });
    }
    bool read_rows(Pixels& pixels) {
        return guarded(report, [&] {
            while (info.output_scanline < info.output_height) {
                JSAMPROW row = &pixels.rgb[std::size_t{info.output_scanline} * info.output_width * 3];
                jpeg_read_scanlines(&info, &row, 1);
            }
            jpeg_finish_decompress(&info);
        });
    }
    void watch_scans(int most) {
        report.most_scans = most;
        progress.progress_monitor = [](j_common_ptr common) {
            Report& watched = Report::of(common);
            const auto* decoder = reinterpret_cast<j_decompress_ptr>(common);
            if (decoder->input_scan_number <= watched.most_scans) return;
            watched.too_many_scans = true;
            std::longjmp(watched.jump, 1);
        };
        info.progress = &progress;
    }
};

struct Encoder {
    Report report;
    jpeg_compress_struct info{};
    unsigned char* made = nullptr;
    unsigned long size = 0;

    Encoder() {
        info.err = &report.manager;
        info.client_data = &report;
    }
    ~Encoder() {
        jpeg_destroy_compress(&info);
        std::free(made);
    }
    Encoder(const Encoder&) = delete;
    Encoder& operator=(const Encoder&) = delete;

    bool write(const Pixels& pixels, int quality) {
        return guarded(report, [&] {
            jpeg_create_compress(&info);
            jpeg_mem_dest(&info, &made, &size);
            info.image_width = static_cast<JDIMENSION>(pixels.width);
            info.image_height = static_cast<JDIMENSION>(pixels.height);
            info.input_components = 3;
            info.in_color_space = JCS_RGB;
            jpeg_set_defaults(&info);
            jpeg_set_quality(&info, quality, TRUE);
            jpeg_start_compress(&info, TRUE);
            while (info.next_scanline < info.image_height) {
                const std::uint8_t* row = &pixels.rgb[std::size_t{info.next_scanline} * info.image_width * 3];
                JSAMPROW line = const_cast<JSAMPROW>(row);  // libjpeg reads it only
                jpeg_write_scanlines(&info, &line, 1);
            }
            jpeg_finish_compress(&info);
        });
    }
};

/// The largest part, 1/1 to 1/8, that leaves enough for area averaging.
unsigned part_for(const jpeg_decompress_struct& info, int longest_px) {
    const auto longest = static_cast<std::int64_t>(std::max(info.image_width, info.image_height));
    unsigned part = 1;
    while (longest_px > 0 && part < 8 && longest / (part * 2) >= longest_px) part *= 2;
    return part;
}

Result<void> check_size(std::string_view jpeg, const PhotoLimits& limits, const std::string& where) {
    if (jpeg.size() > limits.bytes) {
        return bad_input(
            fmt::format("the file has {} MB; at most {} MB can be taken", jpeg.size() >> 20U, limits.bytes >> 20U),
            where);
    }
    if (jpeg.substr(0, 3) == "\xFF\xD8\xFF") return {};
    return bad_input("this is no JPEG picture; save it as JPEG and choose it again", where);
}

Result<void> check_header(const jpeg_decompress_struct& info, const PhotoLimits& limits, const std::string& where) {
    const std::int64_t pixels = std::int64_t{info.image_width} * std::int64_t{info.image_height};
    if (pixels > limits.pixels) {
        return bad_input(fmt::format("the picture has {} megapixels; at most {} can be taken", pixels / 1'000'000,
                                     limits.pixels / 1'000'000),
                         where);
    }
    const J_COLOR_SPACE space = info.jpeg_color_space;
    if (space == JCS_GRAYSCALE || space == JCS_RGB || space == JCS_YCbCr) return {};
    return bad_input("the picture has printing colours; save it in RGB or grey and choose it again", where);
}

tl::unexpected<engine::Error> broken(const Report& report, const std::string& where) {
    if (report.too_many_scans) return bad_input("the picture has too many scans; save it again as plain JPEG", where);
    if (report.message[0] == '\0') return bad_input("the picture is damaged or cut off; copy it again", where);
    return bad_input(fmt::format("the picture cannot be read ({}); copy it again", report.message), where);
}

}  // namespace

Result<Pixels> decode_jpeg(std::string_view jpeg, int longest_px, const PhotoLimits& limits, const std::string& where) {
    if (auto done = check_size(jpeg, limits, where); !done) return tl::make_unexpected(done.error());
    const auto decoder = std::make_unique<Decoder>();
    if (!decoder->read_header(jpeg, limits)) return broken(decoder->report, where);
    if (auto done = check_header(decoder->info, limits, where); !done) return tl::make_unexpected(done.error());
    decoder->watch_scans(limits.scans);
    if (!decoder->start(part_for(decoder->info, longest_px))) return broken(decoder->report, where);
    Pixels pixels{static_cast<int>(decoder->info.output_width), static_cast<int>(decoder->info.output_height), {}};
    pixels.rgb.resize(std::size_t{decoder->info.output_width} * decoder->info.output_height * 3);
    if (!decoder->read_rows(pixels) || decoder->report.damaged) return broken(decoder->report, where);
    return pixels;
}

Result<std::string> encode_jpeg(const Pixels& pixels, int quality) {
    constexpr int longest_edge = 65500;  // of the format
    if (pixels.width < 1 || pixels.height < 1 || std::max(pixels.width, pixels.height) > longest_edge) {
        return bad_input(fmt::format("a picture of {} x {} cannot be a JPEG file", pixels.width, pixels.height));
    }
    const auto encoder = std::make_unique<Encoder>();
    if (!encoder->write(pixels, quality)) return broken(encoder->report, "");
    return std::string(reinterpret_cast<const char*>(encoder->made), encoder->size);
}

}  // namespace sillwalk::app
