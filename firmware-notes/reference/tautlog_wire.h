/*
 * The wire format between instrument and logger, version 1, in portable C11.
 *
 *   instrument                                              logger
 *     tw_encode_hello, _tension, _shaft,  ── bytes ──▶  tw_hear_instrument
 *     _health, _input
 *     tw_hear_logger                      ◀── bytes ──  tw_encode_beacon
 *
 * What the bytes mean is said in ../wire.md. No heap, no floats, no globals that change; all memory is the caller's and its size
 * is known when the program is compiled. Nothing here waits, and no bytes can make it fail. One decoder, one thread.
 */
#ifndef TAUTLOG_WIRE_H
#define TAUTLOG_WIRE_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

enum {
    TW_VERSION = 1,
    TW_ID_LENGTH = 8,          /* characters of an instrument's name */
    TW_MOST_COUNTS = 78,       /* samples in one TENSION frame */
    TW_MOST_AGES = 60,         /* pulses in one SHAFT frame */
    TW_MOST_PAYLOAD = 248,     /* bytes */
    TW_LONGEST_FRAME = 256,    /* bytes on the line, the zero at its end included */
    TW_LONGEST_PIECE = 256     /* bytes before the zero: 255, or one more by an encoder that ends a full group with 01 */
};

/* What a piece of the line turned out to be. From TW_TOO_LONG on: the first test that it failed, in the order of wire.md. */
enum tw_result {
    TW_MORE,                   /* nothing yet: the piece goes on, or was empty */
    TW_FRAME,                  /* a whole frame, written to where the caller said */
    TW_TOO_LONG,
    TW_BAD_COBS,
    TW_TOO_SHORT,
    TW_BAD_CRC,
    TW_UNKNOWN_KIND,
    TW_BAD_LENGTH,
    TW_UNSUPPORTED_VERSION,
    TW_BAD_VALUE
};

enum tw_kind {
    TW_HELLO = 0x01,
    TW_TENSION = 0x02,
    TW_SHAFT = 0x03,
    TW_HEALTH = 0x04,
    TW_INPUT = 0x05,
    TW_BEACON = 0x81
};

enum tw_state { TW_CLEAR = 0, TW_CAUTION = 1, TW_OVER = 2, TW_FAULT = 3 };

enum tw_flag { TW_END_STOP = 0x01, TW_OPEN_BRIDGE = 0x02 };       /* TENSION; bits 4 to 7 are the channel, 0 the line */

enum tw_switch { TW_MARK = 0x01, TW_CLUTCH = 0x02, TW_BRAKE = 0x04 };  /* INPUT, in present and in state */

struct tw_hello {
    uint8_t firmware_major;
    uint8_t firmware_minor;
    char id[TW_ID_LENGTH + 1]; /* printable ASCII, then zeros only */
    uint32_t boot;             /* another value at every start */
    uint32_t tick;             /* now */
    uint32_t tick_hz;          /* 1,000 to 4,000,000 */
    uint32_t rate_millihertz;  /* 1,000 to 4,000,000 */
    int32_t full_scale;        /* counts, above 0 */
    uint16_t pulses_per_revolution; /* 0 without a sensor */
};

struct tw_tension {
    uint32_t tick;             /* of the first sample */
    uint32_t number;           /* of the first sample */
    uint8_t flags;
    uint8_t n;                 /* 1 to TW_MOST_COUNTS */
    int32_t counts[TW_MOST_COUNTS]; /* each -8,388,608 to 8,388,607 */
};

struct tw_shaft {
    uint32_t tick;             /* now */
    uint32_t pulses;           /* since boot */
    uint8_t n;                 /* 0 to TW_MOST_AGES */
    uint32_t ages[TW_MOST_AGES]; /* ticks before tick, oldest first, each at most 16,777,215 */
};

struct tw_health {
    uint32_t tick;
    uint16_t supply_millivolts;
    int16_t board_decidegrees; /* 0.1 degrees Celsius */
    uint32_t lost;             /* samples that could not be sent, since boot */
};

struct tw_input {
    uint32_t tick;
    uint8_t selector;          /* 0 = none */
    uint8_t present;           /* which bits of state are wired: the others are unknown, which is not the same as off */
    uint8_t state;
};

struct tw_beacon {
    uint8_t state;             /* enum tw_state */
};

/* A frame from an instrument; kind says which of the others counts. */
struct tw_frame {
    enum tw_kind kind;
    uint8_t seq;
    union {
        struct tw_hello hello;
        struct tw_tension tension;
        struct tw_shaft shaft;
        struct tw_health health;
        struct tw_input input;
    } as;
};

/*
 * Writing. Each writes one frame with checksum, stuffing and final zero to out, which must have room for TW_LONGEST_FRAME bytes (or
 * for as many as the macros say), and returns its length. A value out of its range: returns 0, and nothing is written. seq is the
 * caller's: it counts every frame of one direction, of any kind.
 */
#define TW_HELLO_BYTES 41
#define TW_TENSION_BYTES(n) (18 + 3 * (n))
#define TW_SHAFT_BYTES(n) (17 + 3 * (n))
#define TW_HEALTH_BYTES 20
#define TW_INPUT_BYTES 15
#define TW_BEACON_BYTES 9

size_t tw_encode_hello(uint8_t *out, uint8_t seq, const struct tw_hello *hello);
size_t tw_encode_tension(uint8_t *out, uint8_t seq, const struct tw_tension *tension);
size_t tw_encode_shaft(uint8_t *out, uint8_t seq, const struct tw_shaft *shaft);
size_t tw_encode_health(uint8_t *out, uint8_t seq, const struct tw_health *health);
size_t tw_encode_input(uint8_t *out, uint8_t seq, const struct tw_input *input);
size_t tw_encode_beacon(uint8_t *out, uint8_t seq, const struct tw_beacon *beacon);

/* A frame of any kind, n bytes of payload as they are; n at most TW_MOST_PAYLOAD. */
size_t tw_encode_raw(uint8_t *out, uint8_t kind, uint8_t seq, const uint8_t *payload, size_t n);

/* Reading. A decoder that is all zero is at the start of a piece: `struct tw_decoder decoder = {0};` */
struct tw_decoder {
    uint16_t length;           /* of the piece begun; stops at TW_LONGEST_PIECE + 1 */
    uint8_t piece[TW_LONGEST_PIECE];
};

/* The logger's side: takes one byte of the line. On TW_FRAME *frame is the frame; else it is untouched or of no meaning. */
enum tw_result tw_hear_instrument(struct tw_decoder *decoder, uint8_t byte, struct tw_frame *frame);

/* The instrument's side: on TW_FRAME *beacon is what the lamps shall show; else it is untouched. */
enum tw_result tw_hear_logger(struct tw_decoder *decoder, uint8_t byte, uint8_t *seq, struct tw_beacon *beacon);

/* The name that wire.md gives to a rejection: "TOO_LONG" ...; "MORE" and "FRAME" for the others. */
const char *tw_result_name(enum tw_result result);

#ifdef __cplusplus
}
#endif

#endif
