/*
 * A board made of arithmetic: ten seconds of an instrument's life on a computer, as fast as that goes. Frames go to standard output,
 * every change of the lamps to standard error. What happens is in the table below; the counter wraps after four seconds.
 */
#include "board.h"
#include "tautlog_wire.h"

#include <inttypes.h>
#include <stdio.h>

#define MICROSECONDS_PER_LOOP 100u
#define TICK_AT_START (0u - 4000000u)
#define SAMPLE_TICKS 2000u           /* 500 Hz */
#define PULSE_TICKS 18518u           /* 540 rpm, six pulses a turn */

/* Microseconds since start. */
enum {
    SHAFT_STARTS = 1000000,
    SELECTOR_TURNS = 3000000,        /* from 1 over 3 to 2 */
    MARK_IS_PRESSED = 4000000,       /* for 0.3 s, with 5 ms of bouncing */
    END_STOP_FROM = 4500000,         /* for 20 ms */
    BRIDGE_OPENS = 5000000,          /* for 0.2 s */
    LINE_IS_BLOCKED = 6000000,       /* for 0.15 s */
    QUEUE_OVERFLOWS = 7000000,       /* ten samples */
    SHAFT_STOPS = 8000000,
    END = 10000000
};

/* What the logger says, and when; the fourth is damaged on the way. */
static const struct {
    uint32_t at;
    enum tw_state state;
    uint8_t damage;
} BEACONS[] = {{2500000, TW_CLEAR, 0}, {3500000, TW_CAUTION, 0}, {4500000, TW_OVER, 0}, {5000000, TW_CLEAR, 0x10}};

static uint32_t micros;
static uint32_t samples;
static uint32_t next_pulse = SHAFT_STARTS;
static uint8_t heard[TW_LONGEST_FRAME];
static size_t heard_length, heard_read, beacons;
static uint8_t lamps_lit;

static bool is_within(uint32_t from, uint32_t length)
{
    return micros >= from && micros < from + length;
}

bool board_is_running(void)
{
    micros += MICROSECONDS_PER_LOOP;
    return micros < END;
}

uint32_t board_tick(void)
{
    return TICK_AT_START + micros;
}

uint32_t board_boot(void)
{
    return 7;
}

/* A ramp, up and down again. */
static int32_t count_of(uint32_t number)
{
    int32_t step = (int32_t)(number % 2000u);
    return 1000 * (step < 1000 ? step : 2000 - step) - 500;
}

bool board_next_sample(struct board_sample *sample)
{
    if (samples * SAMPLE_TICKS > micros) {
        return false;
    }
    if (samples * SAMPLE_TICKS == QUEUE_OVERFLOWS) {
        samples += 10;
        return false;
    }
    sample->number = samples;
    sample->tick = TICK_AT_START + samples * SAMPLE_TICKS;
    sample->count = is_within(END_STOP_FROM, 20000) ? BOARD_FULL_SCALE : count_of(samples);
    samples++;
    return true;
}

bool board_bridge_is_open(void)
{
    return is_within(BRIDGE_OPENS, 200000);
}

bool board_next_pulse(uint32_t *tick)
{
    if (next_pulse > micros || next_pulse >= SHAFT_STOPS) {
        return false;
    }
    *tick = TICK_AT_START + next_pulse;
    next_pulse += PULSE_TICKS;
    return true;
}

struct board_switches board_switches(void)
{
    bool is_bouncing = is_within(MARK_IS_PRESSED, 5000) && micros / 1000u % 2u == 1;
    bool is_pressed = is_within(MARK_IS_PRESSED, 300000) && !is_bouncing;
    bool is_between = is_within(SELECTOR_TURNS, 30000);
    struct board_switches switches = {
        .selector = is_between ? 3 : micros < SELECTOR_TURNS ? 1 : 2,
        .present = TW_MARK,
        .state = is_pressed ? TW_MARK : 0,
    };
    return switches;
}

uint16_t board_supply_millivolts(void)
{
    return 4987;
}

int16_t board_temperature_decidegrees(void)
{
    return -125;
}

bool board_send(const uint8_t *frame, size_t n)
{
    return !is_within(LINE_IS_BLOCKED, 150000) && fwrite(frame, 1, n, stdout) == n;
}

bool board_receive(uint8_t *byte)
{
    if (heard_read == heard_length && beacons < sizeof BEACONS / sizeof BEACONS[0] && micros >= BEACONS[beacons].at) {
        struct tw_beacon beacon = {.state = (uint8_t)BEACONS[beacons].state};
        heard_length = tw_encode_beacon(heard, (uint8_t)beacons, &beacon);
        heard[4] ^= BEACONS[beacons].damage;
        heard_read = 0;
        beacons++;
    }
    if (heard_read == heard_length) {
        return false;
    }
    *byte = heard[heard_read++];
    return true;
}

void board_lamps(uint8_t lit)
{
    static const char *const NAMES[] = {"clear", "caution", "over", "fault"};
    if (lit == lamps_lit) {
        return;
    }
    lamps_lit = lit;
    fprintf(stderr, "%" PRIu32, micros);
    for (int i = 0; i < 4; i++) {
        if (lit >> i & 1) {
            fprintf(stderr, " %s", NAMES[i]);
        }
    }
    fprintf(stderr, "\n");
}
