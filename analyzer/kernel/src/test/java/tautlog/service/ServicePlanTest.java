package tautlog.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;
import tautlog.rig.Gear;
import tautlog.rig.Rig;

class ServicePlanTest {
    @Test
    void readsATaskWithEveryKey() throws ConfigException {
        ServicePlan plan = ServicePlan.parse("service.toml", """
                schema = 1
                [[task]]
                id = "rope"
                title = "Look over the rope"
                on = "rope-1"
                every = { shaft_h = 7.5, pulls = 200, days = 30 }
                after = "overload"
                early_percent = 20
                late_percent = 0
                source = "the maker's manual, page 12"
                how = "Slowly."
                """);

        Task task = plan.task("rope").orElseThrow();
        assertEquals(Optional.of("rope-1"), task.gear());
        assertEquals(
                Map.of(
                        Meter.SHAFT_H, new BigDecimal("7.5"),
                        Meter.PULLS, new BigDecimal("200"),
                        Meter.DAYS, new BigDecimal("30")),
                task.every());
        assertEquals(Optional.of("overload"), task.after());
        assertEquals(new BigDecimal("20"), task.earlyPercent());
        assertEquals(BigDecimal.ZERO, task.latePercent());
    }

    @Test
    void tellsAllProblemsAtOnceEachWithItsLineAndKey() {
        ConfigException wrong = assertThrows(ConfigException.class, () -> ServicePlan.parse("service.toml", """
                        schema = 2
                        [[task]]
                        id = "a"
                        title = "A"
                        on = "winch"
                        every = { shaft_hours = 8, pulls = 2.5 }
                        [[task]]
                        id = "a"
                        on = "winch"
                        after = "overlod"
                        [[task]]
                        id = "c"
                        title = "C"
                        on = "winch"
                        late_percent = 101
                        [[task]]
                        id = "d"
                        title = "D"
                        on = "winch"
                        every = { }
                        """));

        assertEquals(
                """
                service.toml:1: schema: 2 is not only 1.
                service.toml:6: task.a.every.pulls: 2.5 is not a whole number from 1 to 1000000.
                service.toml:6: task.a.every.shaft_hours: is not a known key.
                service.toml:7: task.a.title: is missing.
                service.toml:8: task.a.id: "a" is taken already (line 3).
                service.toml:10: task.a.after: "overlod" is not known here.
                service.toml:11: task.c.every: is missing, and so is after.
                service.toml:15: task.c.late_percent: 101 is out of range.
                service.toml:20: task.d.every.shaft_h: no interval is written.
                """.strip(),
                String.join(
                        "\n",
                        wrong.getMessage()
                                .lines()
                                .filter(l -> !l.startsWith(" "))
                                .toList()));
    }

    @Test
    void saysWhatToWriteWhenThereIsNoTask() {
        ConfigException wrong =
                assertThrows(ConfigException.class, () -> ServicePlan.parse("service.toml", "schema = 1"));

        assertTrue(wrong.getMessage().contains("Write [[task]] with id, title, on and every for each."));
    }

    @Test
    void theShippedSetIsReadAndSaysOfEachTaskWhereItComesFrom() throws Exception {
        Path shipped = Path.of(System.getProperty("tautlog.root"), "samples", "service.toml");

        ServicePlan plan = ServicePlan.parse("service.toml", Files.readString(shipped));

        for (Task task : plan.tasks()) {
            String source = task.source().orElse("");
            assertTrue(
                    source.contains("common practice, no source") || source.contains("CFR") || source.contains("ASME"),
                    task.id());
        }
        assertEquals(
                new BigDecimal("8"),
                plan.task("joint-crosses").orElseThrow().every().get(Meter.SHAFT_H));
        assertEquals(20, plan.tasks().size());
    }

    /** What has no task is not in the list, however overloaded it is. */
    @Test
    void theShippedSetHasATaskAfterAnOverloadForEachGearOfTheShippedRig() throws Exception {
        Path samples = Path.of(System.getProperty("tautlog.root"), "samples");
        Rig rig = Rig.parse("rig.toml", Files.readString(samples.resolve("rig.toml")));
        ServicePlan plan = ServicePlan.parse("service.toml", Files.readString(samples.resolve("service.toml")));

        Set<String> answered = plan.tasks().stream()
                .filter(task -> task.after().isPresent())
                .flatMap(task -> task.gear().stream())
                .collect(Collectors.toSet());

        assertEquals(rig.gear().stream().map(Gear::id).collect(Collectors.toSet()), answered);
    }
}
