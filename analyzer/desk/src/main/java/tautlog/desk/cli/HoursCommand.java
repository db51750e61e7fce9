package tautlog.desk.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

@Command(name = "hours")
final class HoursCommand implements Callable<Integer> {
    @Override
    public Integer call() {
        return 0;
    }
}
