#include "tests/faults/power_cut.hpp"

#include <algorithm>

namespace sillwalk::test {

namespace {

constexpr std::size_t sector = 512;

void put(std::string& file, std::size_t offset, const std::string& data) {
    if (file.size() < offset + data.size()) file.resize(offset + data.size(), '\0');
    file.replace(offset, data.size(), data);
}

void apply(DiskImage& image, const DiskEvent& event) {
    const auto offset = static_cast<std::size_t>(event.offset);
    switch (event.call) {
        case DiskCall::write:
            put(image[event.path], offset, event.data);
            break;
        case DiskCall::truncate:
            image[event.path].resize(std::min(image[event.path].size(), offset));
            break;
        case DiskCall::remove:
            image.erase(event.path);
            break;
        case DiskCall::sync:
            break;
    }
}

void apply_some(DiskImage& image, const DiskEvent& event, std::mt19937& random) {
    if (event.call != DiskCall::write) {
        if (random() % 2 == 0) apply(image, event);
        return;
    }
    for (std::size_t start = 0; start < event.data.size(); start += sector) {
        if (random() % 2 == 0) continue;
        put(image[event.path], static_cast<std::size_t>(event.offset) + start, event.data.substr(start, sector));
    }
}

}  // namespace

void PowerCut::settle(const std::string& path) {
    std::vector<const DiskEvent*> rest;
    for (const DiskEvent* event : pending_) {
        if (event->path == path) {
            apply(durable_, *event);
        } else {
            rest.push_back(event);
        }
    }
    pending_ = std::move(rest);
}

void PowerCut::go_to(std::size_t event) {
    for (; at_ < event; ++at_) {
        const DiskEvent& now = events_[at_];
        if (now.call == DiskCall::sync) {
            if (heeds_) settle(now.path);
            continue;
        }
        if (now.call == DiskCall::remove) settle(now.path);
        pending_.push_back(&now);
        if (now.call == DiskCall::remove) settle(now.path);  // names are taken to be on the disk at once
        while (!heeds_ && pending_.size() > held_) {
            apply(durable_, *pending_.front());
            pending_.erase(pending_.begin());
        }
    }
}

DiskImage PowerCut::image(Damage damage, std::mt19937& random) const {
    DiskImage image = durable_;
    if (damage == Damage::nothing_more) return image;
    for (const DiskEvent* event : pending_) {
        if (damage == Damage::some) {
            apply_some(image, *event, random);
        } else {
            apply(image, *event);
        }
    }
    if (damage != Damage::garbage) return image;
    std::vector<const DiskEvent*> writes;
    for (const DiskEvent* event : pending_) {
        if (event->call == DiskCall::write && image.count(event->path) != 0) writes.push_back(event);
    }
    if (writes.empty()) return image;
    const DiskEvent& hit = *writes[random() % writes.size()];
    std::string rubbish(std::min(sector, hit.data.size()), '\0');
    for (char& byte : rubbish) byte = static_cast<char>(random());
    const auto room = hit.data.size() - rubbish.size();
    put(image[hit.path], static_cast<std::size_t>(hit.offset) + (room == 0 ? 0 : random() % room / sector * sector),
        rubbish);
    return image;
}

}  // namespace sillwalk::test
