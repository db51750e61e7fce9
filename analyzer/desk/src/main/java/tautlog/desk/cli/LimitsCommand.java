package tautlog.desk.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

@Command(name = "limits")
final class LimitsCommand implements Callable<Integer> {
    @Override
    public Integer call() {
        return 0;
    }
}
