/* See tautlog_frame.h; the format is ../wire.md, "One frame" and "How the logger reads". */
#include "tautlog_frame.h"

#include <stdbool.h>

enum { FULL_GROUP = 0xff };    /* length byte of 254 bytes without a zero */

/* ---- CRC-32C (Castagnoli): polynomial 1EDC6F41 reflected, four bits at a time: 64 bytes of table instead of 1,024 ---- */

static const uint32_t CRC_OF_NIBBLE[16] = {
    0x00000000u, 0x105ec76fu, 0x20bd8edeu, 0x30e349b1u, 0x417b1dbcu, 0x5125dad3u, 0x61c69362u, 0x7198540du,
    0x82f63b78u, 0x92a8fc17u, 0xa24bb5a6u, 0xb21572c9u, 0xc38d26c4u, 0xd3d3e1abu, 0xe330a81au, 0xf36e6f75u};

static const uint32_t CRC_START = 0xffffffffu;

static uint32_t crc_of(uint32_t crc, uint8_t byte)
{
    crc ^= byte;
    crc = (crc >> 4) ^ CRC_OF_NIBBLE[crc & 15u];
    return (crc >> 4) ^ CRC_OF_NIBBLE[crc & 15u];
}

/* ---- writing: every byte goes through checksum and stuffing straight into the caller's buffer ---- */

static void end_group(struct tw_writer *w)
{
    w->out[w->length_at] = (uint8_t)(w->at - w->length_at);
    w->length_at = w->at++;
}

/* COBS, one byte: a zero ends the group, and so does the byte after 254 others. */
static void stuff(struct tw_writer *w, uint8_t byte)
{
    if (w->at - w->length_at == FULL_GROUP) {
        end_group(w);
    }
    if (byte == 0) {
        end_group(w);
    } else {
        w->out[w->at++] = byte;
    }
}

void tw_put(struct tw_writer *w, uint32_t value, int bytes)
{
    for (int i = 0; i < bytes; i++) {
        uint8_t byte = (uint8_t)(value >> (8 * i) & 0xffu);
        w->crc = crc_of(w->crc, byte);
        stuff(w, byte);
    }
}

struct tw_writer tw_begin(uint8_t *out, uint8_t kind, uint8_t seq)
{
    struct tw_writer w = {.out = out, .at = 1, .length_at = 0, .crc = CRC_START};
    tw_put(&w, kind, 1);
    tw_put(&w, seq, 1);
    return w;
}

size_t tw_finish(struct tw_writer *w)
{
    uint32_t crc = ~w->crc;
    tw_put(w, crc, TW_CRC);
    w->out[w->length_at] = (uint8_t)(w->at - w->length_at);
    w->out[w->at++] = 0;
    return w->at;
}

/* ---- reading: a piece is kept until its zero comes, then opened in place ---- */

uint32_t tw_take(struct tw_reader *r, int bytes)
{
    uint32_t value = 0;
    for (int i = 0; i < bytes; i++) {
        value |= (uint32_t)*r->at++ << (8 * i);
    }
    return value;
}

/* The sign bit is worth -sign instead of sign; no negative number is shifted. */
int32_t tw_take_signed(struct tw_reader *r, int bytes)
{
    int32_t sign = (int32_t)1 << (8 * bytes - 1);
    uint32_t value = tw_take(r, bytes);
    return (int32_t)(value ^ (uint32_t)sign) - sign;
}

/* COBS in place, of n bytes none of which is zero. False when a length byte points beyond the end. */
static bool unstuff(uint8_t *piece, size_t n, size_t *plain)
{
    size_t to = 0;
    size_t from = 0;
    while (from < n) {
        size_t next = from + piece[from];
        bool is_full = piece[from] == FULL_GROUP;
        if (next > n) {
            return false;
        }
        for (from++; from < next; from++) {
            piece[to++] = piece[from];
        }
        if (!is_full && next < n) {
            piece[to++] = 0;
        }
    }
    *plain = to;
    return true;
}

/* 256 bytes hold 254 only as a full group and the needless last 01. */
static bool is_too_long(const uint8_t *piece, size_t n)
{
    bool is_full_group = n == TW_LONGEST_PIECE && piece[0] == FULL_GROUP && piece[n - 1] == 1;
    return n >= TW_LONGEST_PIECE && !is_full_group;
}

static bool is_intact(const uint8_t *body, size_t covered)
{
    uint32_t crc = CRC_START;
    for (size_t i = 0; i < covered; i++) {
        crc = crc_of(crc, body[i]);
    }
    struct tw_reader sent = {body + covered};
    return tw_take(&sent, TW_CRC) == (uint32_t)~crc;
}

/* Opens a piece: the first four tests. TW_FRAME: kind, seq and payload stand at its begin. */
static enum tw_result open_piece(uint8_t *piece, size_t n, size_t *payload)
{
    size_t body = 0;
    if (is_too_long(piece, n)) {
        return TW_TOO_LONG;
    }
    if (!unstuff(piece, n, &body)) {
        return TW_BAD_COBS;
    }
    if (body < TW_LEAST_BODY) {
        return TW_TOO_SHORT;
    }
    if (!is_intact(piece, body - TW_CRC)) {
        return TW_BAD_CRC;
    }
    *payload = body - TW_LEAST_BODY;
    return TW_FRAME;
}

enum tw_result tw_hear(struct tw_decoder *d, uint8_t byte, size_t *payload)
{
    if (byte != 0) {
        if (d->length < TW_LONGEST_PIECE) {
            d->piece[d->length] = byte;
        }
        if (d->length <= TW_LONGEST_PIECE) {
            d->length++;
        }
        return TW_MORE;
    }
    size_t n = d->length;
    d->length = 0;
    return n == 0 ? TW_MORE : open_piece(d->piece, n, payload);
}
