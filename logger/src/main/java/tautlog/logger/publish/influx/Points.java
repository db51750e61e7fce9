package tautlog.logger.publish.influx;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.influxdb.client.domain.WritePrecision;
import com.influxdb.client.write.Point;
import java.util.Map;
import tautlog.logger.publish.Item;

/**
 * Items as points of InfluxDB. Times are known to the microsecond; the three digits below carry the last three of the position's last
 * number, so that two items of the same microsecond and the same tags do not overwrite each other, while a repeated item does.
 */
final class Points {
    private final String winch;

    Points(String winch) {
        this.winch = winch;
    }

    Point of(Item item) {
        return measured(item)
                .addTag("winch", winch)
                .addField("position", item.position())
                .addField("outing", item.outing())
                .time(nanos(item), WritePrecision.NS);
    }

    private static Point measured(Item item) {
        if (item instanceof Item.OfSecond second) {
            return line(second);
        }
        if (item instanceof Item.OfFinding finding) {
            Point point = Point.measurement("finding").addTag("kind", finding.kind());
            finding.hookup().ifPresent(hookup -> point.addTag("hookup", hookup));
            addAll(point, finding.fields());
            return point.addField("number", finding.number());
        }
        Item.OfMeters meters = (Item.OfMeters) item;
        Point point = Point.measurement("meter").addField("number", meters.number());
        addAll(point, meters.fields());
        return point;
    }

    static long nanos(Item item) {
        return item.utcMicros() * 1_000 + item.number() % 1_000;
    }

    private static Point line(Item.OfSecond second) {
        Point point = Point.measurement("line")
                .addTag("hookup", second.hookup())
                .addField("least_n", second.leastNewtons())
                .addField("mean_n", second.meanNewtons())
                .addField("greatest_n", second.greatestNewtons())
                .addField("flags", second.flags())
                .addField("number", second.number());
        if (Double.isFinite(second.share())) {
            point.addField("share", second.share());
        }
        second.shaftRpm().ifPresent(rpm -> point.addField("shaft_rpm", rpm));
        return point;
    }

    /** Numbers, texts and truth values as fields; what is unknown is left out, lists are for the other outlet. */
    private static void addAll(Point point, JsonObject fields) {
        for (Map.Entry<String, JsonElement> field : fields.entrySet()) {
            JsonElement value = field.getValue();
            if (value.isJsonObject()) {
                value.getAsJsonObject()
                        .entrySet()
                        .forEach(inner -> point.addField(
                                field.getKey() + "_" + inner.getKey(),
                                inner.getValue().getAsDouble()));
            } else if (value.isJsonPrimitive() && !field.getKey().equals("hookup")) {
                add(point, field.getKey(), value);
            }
        }
    }

    private static void add(Point point, String key, JsonElement value) {
        if (value.getAsJsonPrimitive().isNumber()) {
            point.addField(key, value.getAsDouble());
        } else if (value.getAsJsonPrimitive().isBoolean()) {
            point.addField(key, value.getAsBoolean());
        } else {
            point.addField(key, value.getAsString());
        }
    }
}
