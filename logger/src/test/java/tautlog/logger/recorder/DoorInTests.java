package tautlog.logger.recorder;

import java.io.IOException;

/** Lets tests of other rooms stand in for the recorder that closes a recording. */
public final class DoorInTests {
    private DoorInTests() {}

    /** What happens while the door is closed. */
    public interface Meanwhile {
        void happen() throws IOException;
    }

    public static void close(RecordingDoor door, Meanwhile meanwhile) throws IOException {
        door.close(() -> {
            meanwhile.happen();
            return true;
        });
    }
}
