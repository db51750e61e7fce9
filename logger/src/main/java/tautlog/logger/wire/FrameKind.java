package tautlog.logger.wire;

/** The kind bytes and fixed sizes of {@code firmware-notes/wire.md}. */
final class FrameKind {
    static final int HELLO = 0x01;
    static final int TENSION = 0x02;
    static final int SHAFT = 0x03;
    static final int HEALTH = 0x04;
    static final int INPUT = 0x05;
    static final int BEACON = 0x81;

    static final int VERSION = 1;
    /** Bytes before the payload: kind and seq. */
    static final int HEAD = 2;

    static final int CRC = 4;
    static final int LEAST_BODY = HEAD + CRC;
    static final int GREATEST_BODY = 254;

    static final int HELLO_PAYLOAD = 33;
    static final int TENSION_PAYLOAD = 10;
    static final int SHAFT_PAYLOAD = 9;
    static final int HEALTH_PAYLOAD = 12;
    static final int INPUT_PAYLOAD = 7;
    static final int BEACON_PAYLOAD = 1;

    static final int GREATEST_COUNTS = 78;
    static final int GREATEST_AGES = 60;

    private FrameKind() {}
}
