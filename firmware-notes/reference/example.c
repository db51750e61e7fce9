/*
 * The main loop of an instrument: samples, pulses and switches to the logger, the logger's state to the lamps.
 * Everything that depends on the board is behind board.h; everything that depends on the format is behind tautlog_wire.h.
 */
#include "board.h"
#include "tautlog_wire.h"

#define SECONDS(s) ((uint32_t)(s) * BOARD_TICK_HZ)
#define MILLISECONDS(ms) ((uint32_t)(ms) * (BOARD_TICK_HZ / 1000u))

enum { SAMPLES_PER_FRAME = 25, ALL_LAMPS = 0x0f }; /* 50 ms at 500 Hz: the lamps can be no faster than the frames */

static uint8_t out[TW_LONGEST_FRAME];
static uint8_t seq;

/* Samples and pulses that wait for their frame. */
static struct tw_tension batch;
static uint32_t next_number;
static uint32_t lost;

static uint32_t pulse_ticks[TW_MOST_AGES];
static uint8_t pulses_waiting;
static uint32_t pulses;

static uint32_t hello_at, shaft_at, health_at, input_at;

/* Switches: what was told, what is seen, since when. */
static struct board_switches told, seen;
static uint32_t seen_at;

/* Lamps. */
static struct tw_decoder decoder;
static struct tw_beacon beacon;
static uint32_t started_at, heard_at;
static bool is_lamp_test = true;
static bool is_heard;

/* A frame that could not be sent has used its seq all the same: so the logger sees that one is missing. */
static bool send(size_t n)
{
    if (n == 0) {
        return false;
    }
    seq++;
    return board_send(out, n);
}

/* Differences of ticks, never ticks, are compared: the counter wraps. */
static bool is_due(uint32_t *last, uint32_t interval)
{
    uint32_t now = board_tick();
    if (now - *last < interval) {
        return false;
    }
    *last = now;
    return true;
}

/* ---- to the logger ---- */

static bool send_hello(void)
{
    struct tw_hello hello = {
        .firmware_major = 1,
        .firmware_minor = 0,
        .id = "EXAMPLE",
        .boot = board_boot(),
        .tick = board_tick(),
        .tick_hz = BOARD_TICK_HZ,
        .rate_millihertz = BOARD_RATE_MILLIHERTZ,
        .full_scale = BOARD_FULL_SCALE,
        .pulses_per_revolution = BOARD_PULSES_PER_REVOLUTION,
    };
    return send(tw_encode_hello(out, seq, &hello));
}

static void send_batch(void)
{
    if (batch.n > 0 && !send(tw_encode_tension(out, seq, &batch))) {
        lost += batch.n;
    }
    batch.n = 0;
}

static void add_to_batch(const struct board_sample *sample)
{
    if (batch.n == 0) {
        batch.tick = sample->tick;
        batch.number = sample->number;
        batch.flags = 0;
    }
    if (sample->count >= BOARD_FULL_SCALE || sample->count <= -BOARD_FULL_SCALE - 1) {
        batch.flags |= TW_END_STOP;
    }
    if (board_bridge_is_open()) {
        batch.flags |= TW_OPEN_BRIDGE;
    }
    batch.counts[batch.n++] = sample->count;
}

static void take_samples(void)
{
    struct board_sample sample;
    while (board_next_sample(&sample)) {
        if (sample.number != next_number) {  /* the queue was full: only neighbours share a frame */
            send_batch();
            lost += sample.number - next_number;
        }
        next_number = sample.number + 1;
        add_to_batch(&sample);
        if (batch.n == SAMPLES_PER_FRAME) {
            send_batch();
        }
    }
}

static void send_shaft(void)
{
    struct tw_shaft shaft = {.tick = board_tick(), .pulses = pulses};
    for (uint8_t i = 0; i < pulses_waiting; i++) {
        uint32_t age = shaft.tick - pulse_ticks[i];
        if (age <= 0xffffffu) {              /* older than can be told: counted in pulses only */
            shaft.ages[shaft.n++] = age;
        }
    }
    pulses_waiting = 0;
    (void)send(tw_encode_shaft(out, seq, &shaft)); /* lost: the logger sees it from pulses */
}

static void take_pulses(void)
{
    uint32_t tick;
    while (board_next_pulse(&tick)) {
        if (pulses_waiting == TW_MOST_AGES) {
            send_shaft();
        }
        pulse_ticks[pulses_waiting++] = tick;
        pulses++;
    }
    if (is_due(&shaft_at, MILLISECONDS(100))) { /* also when nothing turns */
        send_shaft();
    }
}

static void send_health(void)
{
    struct tw_health health = {
        .tick = board_tick(),
        .supply_millivolts = board_supply_millivolts(),
        .board_decidegrees = board_temperature_decidegrees(),
        .lost = lost,
    };
    (void)send(tw_encode_health(out, seq, &health));
}

static bool is_same(struct board_switches a, struct board_switches b)
{
    return a.selector == b.selector && a.present == b.present && a.state == b.state;
}

static void send_input(void)
{
    struct tw_input input = {
        .tick = board_tick(), .selector = told.selector, .present = told.present, .state = told.state};
    (void)send(tw_encode_input(out, seq, &input));
}

/* A change counts when it has stood for 50 ms: contacts bounce, and a switch on its way passes other positions. */
static void take_switches(void)
{
    struct board_switches now = board_switches();
    if (!is_same(now, seen)) {
        seen = now;
        seen_at = board_tick();
    }
    bool is_new = !is_same(seen, told) && board_tick() - seen_at >= MILLISECONDS(50);
    if (is_new) {
        told = seen;
        input_at = board_tick();
        send_input();
    } else if (is_due(&input_at, SECONDS(1))) {
        send_input();
    }
}

/* ---- from the logger ---- */

static void hear(void)
{
    uint8_t byte;
    uint8_t its_seq;
    while (board_receive(&byte)) {
        if (tw_hear_logger(&decoder, byte, &its_seq, &beacon) == TW_FRAME) {
            is_heard = true;
            heard_at = board_tick();
        }
    }
}

/* Both times are only looked at until they are over: after the counter's wrap they would seem young again. */
static uint8_t lamps(void)
{
    uint32_t now = board_tick();
    is_lamp_test = is_lamp_test && now - started_at < SECONDS(2);
    is_heard = is_heard && now - heard_at < SECONDS(3);
    if (is_lamp_test) {
        return ALL_LAMPS;
    }
    return (uint8_t)(1u << (is_heard ? beacon.state : TW_FAULT));
}

static void start(void)
{
    static const uint8_t zero = 0;
    started_at = hello_at = shaft_at = health_at = input_at = seen_at = board_tick();
    told = seen = board_switches();
    (void)board_send(&zero, 1);              /* ends whatever noise came before */
    while (!send_hello() && board_is_running()) {
        board_lamps(lamps());
    }
    send_input();
}

int main(void)
{
    start();
    while (board_is_running()) {
        take_samples();
        take_pulses();
        take_switches();
        hear();
        board_lamps(lamps());
        if (is_due(&hello_at, SECONDS(1))) {
            (void)send_hello();
        }
        if (is_due(&health_at, SECONDS(1))) {
            send_health();
        }
    }
    return 0;
}
