package tautlog.logger.run;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.Optional;
import tautlog.logger.LoggerFolder;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.logger.recorder.RecordingStore;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;

/** Real recordings on a disk that can be told to be full: then no commit reaches it. */
final class FullDisk {
    volatile boolean isFull;

    /** This computer, with this disk. */
    Board of(LoggerFolder folder) {
        Board here = Board.here(folder.recordings());
        return new Board(here.clock(), here.space(), this::over);
    }

    private RecordingStore over(RecordingFiles files) {
        DayFiles real = new DayFiles(files);
        return new RecordingStore() {
            @Override
            public OutingWriter begin(OutingStart start, Optional<Long> utcMicros) throws RecordingException {
                refuseWhenFull();
                return refusing(real.begin(start, utcMicros));
            }

            @Override
            public Optional<String> file() {
                return real.file();
            }

            @Override
            public void close() throws RecordingException {
                real.close();
            }
        };
    }

    private OutingWriter refusing(OutingWriter real) {
        return (OutingWriter) Proxy.newProxyInstance(
                FullDisk.class.getClassLoader(), new Class<?>[] {OutingWriter.class}, (proxy, method, arguments) -> {
                    if (method.getName().equals("commit")) {
                        refuseWhenFull();
                    }
                    try {
                        return method.invoke(real, arguments);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    private void refuseWhenFull() throws RecordingException {
        if (isFull) {
            throw new RecordingException("upper-landing.tautlog: cannot grow: the disk is full.");
        }
    }
}
