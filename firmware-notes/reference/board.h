/*
 * What example.c asks of a board. host_board.c is one made of arithmetic, for trying things on a computer; write your own beside it.
 * None of these may wait: interrupts fill queues, these empty them.
 */
#ifndef BOARD_H
#define BOARD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define BOARD_TICK_HZ 1000000u       /* of a free-running counter that nobody ever sets */
#define BOARD_RATE_MILLIHERTZ 500000u
#define BOARD_FULL_SCALE 8388607     /* of a 24-bit converter */
#define BOARD_PULSES_PER_REVOLUTION 6u

/* False ends the program, which only the computer's board does. The place to feed a watchdog. */
bool board_is_running(void);

/* The free-running counter, now. */
uint32_t board_tick(void);

/* Another value at every start: a counter in flash, or a random number. */
uint32_t board_boot(void);

/* Stamped and numbered by the interrupt that says "converted". Count a conversion even when the queue has no room for it. */
struct board_sample {
    uint32_t number;                 /* conversions since start; the first is 0 */
    uint32_t tick;
    int32_t count;
};

/* The oldest sample that is waiting; false when none is. */
bool board_next_sample(struct board_sample *sample);

bool board_bridge_is_open(void);

/* When the oldest pulse came that is waiting, stamped by hardware capture; false when none is. */
bool board_next_pulse(uint32_t *tick);

/* The switches as they stand, not debounced; the bits are those of enum tw_switch. */
struct board_switches {
    uint8_t selector;
    uint8_t present;
    uint8_t state;
};

struct board_switches board_switches(void);

uint16_t board_supply_millivolts(void);
int16_t board_temperature_decidegrees(void);

/* The whole frame, or nothing when the output queue has no room for it: false. */
bool board_send(const uint8_t *frame, size_t n);

/* The oldest byte from the logger; false when none is waiting. */
bool board_receive(uint8_t *byte);

/* Bit 0 is the lamp for clear, 1 caution, 2 over, 3 fault: 1 << enum tw_state. */
void board_lamps(uint8_t lit);

#endif
