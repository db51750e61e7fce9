/*
 * What every frame has, whatever it says: checksum, stuffing, the zero at its end. Used by tautlog_wire.c only.
 *
 *   tw_begin ▶ tw_put ▶ tw_put ▶ … ▶ tw_finish      byte ▶ tw_hear ▶ TW_FRAME ▶ tw_take ▶ tw_take ▶ …
 */
#ifndef TAUTLOG_FRAME_H
#define TAUTLOG_FRAME_H

#include "tautlog_wire.h"

enum { TW_HEAD = 2, TW_CRC = 4, TW_LEAST_BODY = TW_HEAD + TW_CRC }; /* kind and seq; checksum */

/* Writes straight into the caller's buffer. */
struct tw_writer {
    uint8_t *out;
    size_t at;                 /* where the next byte goes */
    size_t length_at;          /* where the length byte of the group begun will stand */
    uint32_t crc;
};

struct tw_writer tw_begin(uint8_t *out, uint8_t kind, uint8_t seq);

/* The low bytes of value, least first. */
void tw_put(struct tw_writer *w, uint32_t value, int bytes);

/* Checksum and final zero; the frame's length. */
size_t tw_finish(struct tw_writer *w);

/*
 * Keeps one byte; when it is the zero that ends a piece, opens that: the first four tests of wire.md. TW_FRAME: kind, seq and
 * *payload bytes of payload stand at the begin of decoder->piece.
 */
enum tw_result tw_hear(struct tw_decoder *decoder, uint8_t byte, size_t *payload);

/* Reads a payload from its begin; at goes forward. */
struct tw_reader {
    const uint8_t *at;
};

/* Whole number of 1 to 4 bytes, least byte first. */
uint32_t tw_take(struct tw_reader *r, int bytes);

/* The same of 2 or 3 bytes, two's complement. */
int32_t tw_take_signed(struct tw_reader *r, int bytes);

#endif
