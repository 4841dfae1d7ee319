#pragma once

#include <atomic>
#include <cstdint>
#include <utility>

namespace doorloom {

// A value that copies share until one of them writes. Copies may live in different threads.
// std::shared_ptr will not do: its use_count() does not wait for what the last reader in another thread did.
// Owns:   its value, together with its copies
// Cost:   copying counts one up; writing copies the value while it is shared
template <class Value> class Shared {
public:
    explicit Shared(Value value) : box_(new Box{std::move(value), {1}}) {}
    Shared(const Shared& other) : box_(other.box_) { box_->owners.fetch_add(1, std::memory_order_relaxed); }
    Shared(Shared&& other) noexcept : box_(std::exchange(other.box_, nullptr)) {}
    Shared& operator=(Shared other) noexcept
    {
        std::swap(box_, other.box_);
        return *this;
    }
    ~Shared()
    {
        if (box_ && box_->owners.fetch_sub(1, std::memory_order_acq_rel) == 1)
            delete box_;
    }

    const Value& operator*() const { return box_->value; }
    const Value* operator->() const { return &box_->value; }

    Value& writable()
    {
        if (box_->owners.load(std::memory_order_acquire) > 1)
            *this = Shared(box_->value);
        return box_->value;
    }

    bool sharesWith(const Shared& other) const { return box_ == other.box_; }

private:
    struct Box {
        Value value;
        std::atomic<std::uint32_t> owners;
    };
    Box* box_; // null only in what was moved from
};

} // namespace doorloom
