/*
 * Compares this encoder and decoder with others: lines of text in or out, bytes the other way. Runs on a computer, not on a board.
 *
 *   driver hear-instrument   bytes ▶ one line for every frame or rejected piece
 *   driver hear-logger       the same for BEACON
 *   driver encode            one line ▶ one line: the frame in hexadecimal, or "refused"
 *
 * The lines are the fields of wire.md in their order, in decimal, apart from the id, which is hexadecimal like all bytes:
 *
 *   hello SEQ MAJOR MINOR ID BOOT TICK TICK_HZ RATE FULL_SCALE PULSES      health SEQ TICK SUPPLY BOARD LOST
 *   tension SEQ TICK NUMBER FLAGS N COUNT…                                 input SEQ TICK SELECTOR PRESENT STATE
 *   shaft SEQ TICK PULSES N AGE…                                           beacon SEQ STATE
 *   raw KIND SEQ PAYLOAD                                                   BAD_CRC …
 */
#include "tautlog_wire.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void print_tension(uint8_t seq, const struct tw_tension *t)
{
    printf("tension %u %" PRIu32 " %" PRIu32 " %u %u", seq, t->tick, t->number, t->flags, t->n);
    for (int i = 0; i < t->n; i++) {
        printf(" %" PRId32, t->counts[i]);
    }
    printf("\n");
}

static void print_shaft(uint8_t seq, const struct tw_shaft *s)
{
    printf("shaft %u %" PRIu32 " %" PRIu32 " %u", seq, s->tick, s->pulses, s->n);
    for (int i = 0; i < s->n; i++) {
        printf(" %" PRIu32, s->ages[i]);
    }
    printf("\n");
}

static void print_hello(uint8_t seq, const struct tw_hello *h)
{
    printf("hello %u %u %u ", seq, h->firmware_major, h->firmware_minor);
    for (int i = 0; i < TW_ID_LENGTH; i++) {
        printf("%02x", (unsigned)(uint8_t)h->id[i]);
    }
    printf(" %" PRIu32 " %" PRIu32 " %" PRIu32 " %" PRIu32 " %" PRId32 " %u\n", h->boot, h->tick, h->tick_hz,
        h->rate_millihertz, h->full_scale, h->pulses_per_revolution);
}

static void print_frame(const struct tw_frame *f)
{
    const struct tw_health *health = &f->as.health;
    const struct tw_input *input = &f->as.input;
    switch (f->kind) {
    case TW_HELLO: print_hello(f->seq, &f->as.hello); break;
    case TW_TENSION: print_tension(f->seq, &f->as.tension); break;
    case TW_SHAFT: print_shaft(f->seq, &f->as.shaft); break;
    case TW_HEALTH:
        printf("health %u %" PRIu32 " %u %d %" PRIu32 "\n", f->seq, health->tick, health->supply_millivolts,
            health->board_decidegrees, health->lost);
        break;
    case TW_INPUT:
        printf("input %u %" PRIu32 " %u %u %u\n", f->seq, input->tick, input->selector, input->present, input->state);
        break;
    default: printf("a kind that is none\n"); break;
    }
}

static void hear_instrument(void)
{
    static struct tw_decoder decoder;
    static struct tw_frame frame;
    for (int byte = getchar(); byte != EOF; byte = getchar()) {
        enum tw_result result = tw_hear_instrument(&decoder, (uint8_t)byte, &frame);
        if (result == TW_FRAME) {
            print_frame(&frame);
        } else if (result != TW_MORE) {
            printf("%s\n", tw_result_name(result));
        }
    }
}

static void hear_logger(void)
{
    static struct tw_decoder decoder;
    uint8_t seq = 0;
    struct tw_beacon beacon = {0};
    for (int byte = getchar(); byte != EOF; byte = getchar()) {
        enum tw_result result = tw_hear_logger(&decoder, (uint8_t)byte, &seq, &beacon);
        if (result == TW_FRAME) {
            printf("beacon %u %u\n", seq, beacon.state);
        } else if (result != TW_MORE) {
            printf("%s\n", tw_result_name(result));
        }
    }
}

static const char *word(void)
{
    const char *next = strtok(NULL, " \n");
    if (next == NULL) {
        fprintf(stderr, "a line ends too early\n");
        exit(2);
    }
    return next;
}

static long long number(void)
{
    return strtoll(word(), NULL, 10);
}

/* Hexadecimal digits to bytes; returns how many. */
static size_t bytes(uint8_t *to, size_t room)
{
    const char *text = word();
    size_t n = strcmp(text, "-") == 0 ? 0 : strlen(text) / 2;
    if (n > room) {
        fprintf(stderr, "too many bytes: %s\n", text);
        exit(2);
    }
    for (size_t i = 0; i < n; i++) {
        char pair[3] = {text[2 * i], text[2 * i + 1], 0};
        to[i] = (uint8_t)strtoul(pair, NULL, 16);
    }
    return n;
}

static size_t encode_hello(uint8_t *out)
{
    struct tw_hello h = {0};
    uint8_t seq = (uint8_t)number();
    h.firmware_major = (uint8_t)number();
    h.firmware_minor = (uint8_t)number();
    bytes((uint8_t *)h.id, TW_ID_LENGTH);
    h.boot = (uint32_t)number();
    h.tick = (uint32_t)number();
    h.tick_hz = (uint32_t)number();
    h.rate_millihertz = (uint32_t)number();
    h.full_scale = (int32_t)number();
    h.pulses_per_revolution = (uint16_t)number();
    return tw_encode_hello(out, seq, &h);
}

/* More than fit are read and left out; n stays too great, so that the frame is refused. */
static size_t encode_tension(uint8_t *out)
{
    struct tw_tension t = {0};
    uint8_t seq = (uint8_t)number();
    t.tick = (uint32_t)number();
    t.number = (uint32_t)number();
    t.flags = (uint8_t)number();
    t.n = (uint8_t)number();
    for (int i = 0; i < t.n && i < TW_MOST_COUNTS; i++) {
        t.counts[i] = (int32_t)number();
    }
    return tw_encode_tension(out, seq, &t);
}

static size_t encode_shaft(uint8_t *out)
{
    struct tw_shaft s = {0};
    uint8_t seq = (uint8_t)number();
    s.tick = (uint32_t)number();
    s.pulses = (uint32_t)number();
    s.n = (uint8_t)number();
    for (int i = 0; i < s.n && i < TW_MOST_AGES; i++) {
        s.ages[i] = (uint32_t)number();
    }
    return tw_encode_shaft(out, seq, &s);
}

static size_t encode_health(uint8_t *out)
{
    struct tw_health h = {0};
    uint8_t seq = (uint8_t)number();
    h.tick = (uint32_t)number();
    h.supply_millivolts = (uint16_t)number();
    h.board_decidegrees = (int16_t)number();
    h.lost = (uint32_t)number();
    return tw_encode_health(out, seq, &h);
}

static size_t encode_input(uint8_t *out)
{
    struct tw_input input = {0};
    uint8_t seq = (uint8_t)number();
    input.tick = (uint32_t)number();
    input.selector = (uint8_t)number();
    input.present = (uint8_t)number();
    input.state = (uint8_t)number();
    return tw_encode_input(out, seq, &input);
}

static size_t encode_beacon(uint8_t *out)
{
    uint8_t seq = (uint8_t)number();
    struct tw_beacon beacon = {.state = (uint8_t)number()};
    return tw_encode_beacon(out, seq, &beacon);
}

static size_t encode_raw(uint8_t *out)
{
    static uint8_t payload[TW_MOST_PAYLOAD + 1];
    uint8_t kind = (uint8_t)number();
    uint8_t seq = (uint8_t)number();
    size_t n = bytes(payload, sizeof payload);
    return tw_encode_raw(out, kind, seq, payload, n);
}

static size_t encode_line(char *line, uint8_t *out)
{
    static const struct {
        const char *name;
        size_t (*encode)(uint8_t *out);
    } KINDS[] = {{"hello", encode_hello}, {"tension", encode_tension}, {"shaft", encode_shaft}, {"health", encode_health},
        {"input", encode_input}, {"beacon", encode_beacon}, {"raw", encode_raw}};
    const char *kind = strtok(line, " \n");
    for (size_t i = 0; kind != NULL && i < sizeof KINDS / sizeof KINDS[0]; i++) {
        if (strcmp(kind, KINDS[i].name) == 0) {
            return KINDS[i].encode(out);
        }
    }
    fprintf(stderr, "no such frame: %s\n", kind == NULL ? "(empty line)" : kind);
    exit(2);
}

static void encode(void)
{
    static char line[4096];
    while (fgets(line, sizeof line, stdin) != NULL) {
        uint8_t out[TW_LONGEST_FRAME];
        size_t n = encode_line(line, out);
        if (n == 0) {
            printf("refused");
        }
        for (size_t i = 0; i < n; i++) {
            printf("%02x", out[i]);
        }
        printf("\n");
    }
}

int main(int argc, char **argv)
{
    const char *what = argc == 2 ? argv[1] : "";
    if (strcmp(what, "hear-instrument") == 0) {
        hear_instrument();
    } else if (strcmp(what, "hear-logger") == 0) {
        hear_logger();
    } else if (strcmp(what, "encode") == 0) {
        encode();
    } else {
        fprintf(stderr, "usage: driver hear-instrument | hear-logger | encode\n");
        return 2;
    }
    return ferror(stdin) || fflush(stdout) != 0 ? 1 : 0;
}
