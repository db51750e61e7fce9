package tautlog.logger.cli;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.logger.port.ListedPort;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.port.UsbIdentity;

/** Lists the serial ports. */
@Command(
        name = "ports",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  tautlogd ports%n" + "  tautlogd ports --json%n" + "%n",
        header = "Lists the serial ports.",
        description =
                "Lists the serial ports with what the system knows of them. What begins with usb: may stand as the port in"
                        + " logger.toml: the device is then found under whatever name it gets.")
final class PortsCommand implements Callable<Integer> {
    private static final Gson PRETTY =
            new GsonBuilder().setPrettyPrinting().serializeNulls().create();

    @Option(names = "--json", description = "Prints one JSON document.")
    private boolean json;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() {
        List<ListedPort> ports = SerialInstrumentPort.list();
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(PRETTY.toJson(document(ports)));
        } else {
            ports.forEach(port -> out.println(line(port)));
            if (ports.isEmpty()) {
                spec.commandLine().getErr().println("no serial port is there; plug the instrument in");
            }
        }
        return ExitCode.DONE;
    }

    private static String line(ListedPort port) {
        return Stream.of(
                        port.path(), port.description(), port.maker(), usb(port).orElse(""))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining("  "));
    }

    private static Optional<String> usb(ListedPort port) {
        return port.usb().map(UsbIdentity::toString);
    }

    private static JsonObject document(List<ListedPort> ports) {
        JsonArray list = new JsonArray();
        for (ListedPort port : ports) {
            JsonObject entry = new JsonObject();
            entry.addProperty("port", port.path());
            entry.addProperty("description", port.description());
            entry.addProperty("maker", port.maker());
            entry.addProperty("serial", port.serial());
            entry.add("usb", usb(port).<JsonElement>map(JsonPrimitive::new).orElse(JsonNull.INSTANCE));
            list.add(entry);
        }
        JsonObject document = new JsonObject();
        document.addProperty("schema", 1);
        document.add("ports", list);
        return document;
    }
}
