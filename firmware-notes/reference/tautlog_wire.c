/* See tautlog_wire.h. What each kind of frame says, both ways; the format is ../wire.md. */
#include "tautlog_frame.h"

#include <stdbool.h>

/* Payloads; of TENSION and SHAFT without the counts and ages. */
enum {
    HELLO_PAYLOAD = 33,
    TENSION_PAYLOAD = 10,
    SHAFT_PAYLOAD = 9,
    HEALTH_PAYLOAD = 12,
    INPUT_PAYLOAD = 7,
    BEACON_PAYLOAD = 1
};

/* Not in an enum: an int may have 16 bits only. */
static const uint32_t LEAST_TICK_HZ = 1000;
static const uint32_t MOST_TICK_HZ = 4000000;
static const uint32_t LEAST_RATE_MILLIHERTZ = 1000;
static const uint32_t MOST_RATE_MILLIHERTZ = 4000000;
static const uint32_t MOST_AGE = 0xffffff;
static const int32_t MOST_COUNT = 0x7fffff;
static const int32_t LEAST_COUNT = -0x7fffff - 1;

/* ---- what is in range; writing and reading ask the same ---- */

static bool is_between(uint32_t value, uint32_t least, uint32_t most)
{
    return value >= least && value <= most;
}

/* Printable ASCII, then zeros only. */
static bool is_name(const char *id)
{
    int i = 0;
    while (i < TW_ID_LENGTH && id[i] >= 0x20 && id[i] <= 0x7e) {
        i++;
    }
    while (i < TW_ID_LENGTH && id[i] == 0) {
        i++;
    }
    return i == TW_ID_LENGTH;
}

static bool is_good_hello(const struct tw_hello *h)
{
    return is_between(h->tick_hz, LEAST_TICK_HZ, MOST_TICK_HZ)
        && is_between(h->rate_millihertz, LEAST_RATE_MILLIHERTZ, MOST_RATE_MILLIHERTZ)
        && h->full_scale > 0
        && is_name(h->id);
}

static bool is_good_tension(const struct tw_tension *t)
{
    if (t->n < 1 || t->n > TW_MOST_COUNTS) {
        return false;
    }
    for (int i = 0; i < t->n; i++) {
        if (t->counts[i] < LEAST_COUNT || t->counts[i] > MOST_COUNT) {
            return false;
        }
    }
    return true;
}

/* No age is greater than the one before it. */
static bool is_good_shaft(const struct tw_shaft *s)
{
    if (s->n > TW_MOST_AGES) {
        return false;
    }
    uint32_t most = MOST_AGE;
    for (int i = 0; i < s->n; i++) {
        if (s->ages[i] > most) {
            return false;
        }
        most = s->ages[i];
    }
    return true;
}

/* ---- the frames ---- */

size_t tw_encode_hello(uint8_t *out, uint8_t seq, const struct tw_hello *hello)
{
    if (!is_good_hello(hello)) {
        return 0;
    }
    struct tw_writer w = tw_begin(out, TW_HELLO, seq);
    tw_put(&w, TW_VERSION, 1);
    tw_put(&w, hello->firmware_major, 1);
    tw_put(&w, hello->firmware_minor, 1);
    for (int i = 0; i < TW_ID_LENGTH; i++) {
        tw_put(&w, (uint8_t)hello->id[i], 1);
    }
    tw_put(&w, hello->boot, 4);
    tw_put(&w, hello->tick, 4);
    tw_put(&w, hello->tick_hz, 4);
    tw_put(&w, hello->rate_millihertz, 4);
    tw_put(&w, (uint32_t)hello->full_scale, 4);
    tw_put(&w, hello->pulses_per_revolution, 2);
    return tw_finish(&w);
}

size_t tw_encode_tension(uint8_t *out, uint8_t seq, const struct tw_tension *tension)
{
    if (!is_good_tension(tension)) {
        return 0;
    }
    struct tw_writer w = tw_begin(out, TW_TENSION, seq);
    tw_put(&w, tension->tick, 4);
    tw_put(&w, tension->number, 4);
    tw_put(&w, tension->flags, 1);
    tw_put(&w, tension->n, 1);
    for (int i = 0; i < tension->n; i++) {
        tw_put(&w, (uint32_t)tension->counts[i], 3);
    }
    return tw_finish(&w);
}

size_t tw_encode_shaft(uint8_t *out, uint8_t seq, const struct tw_shaft *shaft)
{
    if (!is_good_shaft(shaft)) {
        return 0;
    }
    struct tw_writer w = tw_begin(out, TW_SHAFT, seq);
    tw_put(&w, shaft->tick, 4);
    tw_put(&w, shaft->pulses, 4);
    tw_put(&w, shaft->n, 1);
    for (int i = 0; i < shaft->n; i++) {
        tw_put(&w, shaft->ages[i], 3);
    }
    return tw_finish(&w);
}

size_t tw_encode_health(uint8_t *out, uint8_t seq, const struct tw_health *health)
{
    struct tw_writer w = tw_begin(out, TW_HEALTH, seq);
    tw_put(&w, health->tick, 4);
    tw_put(&w, health->supply_millivolts, 2);
    tw_put(&w, (uint16_t)health->board_decidegrees, 2);
    tw_put(&w, health->lost, 4);
    return tw_finish(&w);
}

size_t tw_encode_input(uint8_t *out, uint8_t seq, const struct tw_input *input)
{
    struct tw_writer w = tw_begin(out, TW_INPUT, seq);
    tw_put(&w, input->tick, 4);
    tw_put(&w, input->selector, 1);
    tw_put(&w, input->present, 1);
    tw_put(&w, input->state, 1);
    return tw_finish(&w);
}

size_t tw_encode_beacon(uint8_t *out, uint8_t seq, const struct tw_beacon *beacon)
{
    if (beacon->state > TW_FAULT) {
        return 0;
    }
    return tw_encode_raw(out, TW_BEACON, seq, &beacon->state, BEACON_PAYLOAD);
}

size_t tw_encode_raw(uint8_t *out, uint8_t kind, uint8_t seq, const uint8_t *payload, size_t n)
{
    if (n > TW_MOST_PAYLOAD) {
        return 0;
    }
    struct tw_writer w = tw_begin(out, kind, seq);
    for (size_t i = 0; i < n; i++) {
        tw_put(&w, payload[i], 1);
    }
    return tw_finish(&w);
}

static enum tw_result read_hello(const uint8_t *payload, size_t n, struct tw_hello *h)
{
    struct tw_reader r = {payload};
    if (n < HELLO_PAYLOAD) {   /* a longer one is valid; what follows is ignored */
        return TW_BAD_LENGTH;
    }
    if (tw_take(&r, 1) != TW_VERSION) {
        return TW_UNSUPPORTED_VERSION;
    }
    h->firmware_major = (uint8_t)tw_take(&r, 1);
    h->firmware_minor = (uint8_t)tw_take(&r, 1);
    for (int i = 0; i < TW_ID_LENGTH; i++) {
        h->id[i] = (char)tw_take(&r, 1);
    }
    h->id[TW_ID_LENGTH] = 0;
    h->boot = tw_take(&r, 4);
    h->tick = tw_take(&r, 4);
    h->tick_hz = tw_take(&r, 4);
    h->rate_millihertz = tw_take(&r, 4);
    uint32_t full_scale = tw_take(&r, 4);
    h->full_scale = full_scale > INT32_MAX ? -1 : (int32_t)full_scale;
    h->pulses_per_revolution = (uint16_t)tw_take(&r, 2);
    return is_good_hello(h) ? TW_FRAME : TW_BAD_VALUE;
}

static enum tw_result read_tension(const uint8_t *payload, size_t n, struct tw_tension *t)
{
    struct tw_reader r = {payload};
    if (n < TENSION_PAYLOAD || n != TENSION_PAYLOAD + 3u * payload[TENSION_PAYLOAD - 1]) {
        return TW_BAD_LENGTH;
    }
    t->tick = tw_take(&r, 4);
    t->number = tw_take(&r, 4);
    t->flags = (uint8_t)tw_take(&r, 1);
    t->n = (uint8_t)tw_take(&r, 1);
    for (int i = 0; i < t->n && i < TW_MOST_COUNTS; i++) {
        t->counts[i] = tw_take_signed(&r, 3);
    }
    return is_good_tension(t) ? TW_FRAME : TW_BAD_VALUE;
}

static enum tw_result read_shaft(const uint8_t *payload, size_t n, struct tw_shaft *s)
{
    struct tw_reader r = {payload};
    if (n < SHAFT_PAYLOAD || n != SHAFT_PAYLOAD + 3u * payload[SHAFT_PAYLOAD - 1]) {
        return TW_BAD_LENGTH;
    }
    s->tick = tw_take(&r, 4);
    s->pulses = tw_take(&r, 4);
    s->n = (uint8_t)tw_take(&r, 1);
    for (int i = 0; i < s->n && i < TW_MOST_AGES; i++) {
        s->ages[i] = tw_take(&r, 3);
    }
    return is_good_shaft(s) ? TW_FRAME : TW_BAD_VALUE;
}

static enum tw_result read_health(const uint8_t *payload, size_t n, struct tw_health *h)
{
    struct tw_reader r = {payload};
    if (n != HEALTH_PAYLOAD) {
        return TW_BAD_LENGTH;
    }
    h->tick = tw_take(&r, 4);
    h->supply_millivolts = (uint16_t)tw_take(&r, 2);
    h->board_decidegrees = (int16_t)tw_take_signed(&r, 2);
    h->lost = tw_take(&r, 4);
    return TW_FRAME;
}

static enum tw_result read_input(const uint8_t *payload, size_t n, struct tw_input *input)
{
    struct tw_reader r = {payload};
    if (n != INPUT_PAYLOAD) {
        return TW_BAD_LENGTH;
    }
    input->tick = tw_take(&r, 4);
    input->selector = (uint8_t)tw_take(&r, 1);
    input->present = (uint8_t)tw_take(&r, 1);
    input->state = (uint8_t)tw_take(&r, 1);
    return TW_FRAME;
}

enum tw_result tw_hear_instrument(struct tw_decoder *decoder, uint8_t byte, struct tw_frame *frame)
{
    size_t n = 0;
    enum tw_result result = tw_hear(decoder, byte, &n);
    if (result != TW_FRAME) {
        return result;
    }
    const uint8_t *payload = decoder->piece + TW_HEAD;
    uint8_t kind = decoder->piece[0];
    frame->kind = (enum tw_kind)kind;
    frame->seq = decoder->piece[1];
    switch (kind) {
    case TW_HELLO: return read_hello(payload, n, &frame->as.hello);
    case TW_TENSION: return read_tension(payload, n, &frame->as.tension);
    case TW_SHAFT: return read_shaft(payload, n, &frame->as.shaft);
    case TW_HEALTH: return read_health(payload, n, &frame->as.health);
    case TW_INPUT: return read_input(payload, n, &frame->as.input);
    default: return TW_UNKNOWN_KIND;
    }
}

enum tw_result tw_hear_logger(struct tw_decoder *decoder, uint8_t byte, uint8_t *seq, struct tw_beacon *beacon)
{
    size_t n = 0;
    enum tw_result result = tw_hear(decoder, byte, &n);
    if (result != TW_FRAME) {
        return result;
    }
    if (decoder->piece[0] != TW_BEACON) {
        return TW_UNKNOWN_KIND;
    }
    if (n != BEACON_PAYLOAD) {
        return TW_BAD_LENGTH;
    }
    if (decoder->piece[TW_HEAD] > TW_FAULT) {
        return TW_BAD_VALUE;
    }
    *seq = decoder->piece[1];
    beacon->state = decoder->piece[TW_HEAD];
    return TW_FRAME;
}

const char *tw_result_name(enum tw_result result)
{
    static const char *const NAMES[] = {"MORE", "FRAME", "TOO_LONG", "BAD_COBS", "TOO_SHORT", "BAD_CRC",
        "UNKNOWN_KIND", "BAD_LENGTH", "UNSUPPORTED_VERSION", "BAD_VALUE"};
    return NAMES[result];
}
