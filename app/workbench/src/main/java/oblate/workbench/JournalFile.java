/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import oblate.base.ProblemException;
import oblate.workbench.words.Texts;

/**
 * Keeps the journal of edits of one archive as a file of JSON in the settings folder. Each writing goes beside, is flushed to the disk and renamed, so that a
 * crash leaves the old or the new journal.
 */
final class JournalFile {
    private static final Texts TEXTS = Texts.of(JournalFile.class);
    private static final int VERSION = 1;

    /** Longer than any journal of ours; such a file is not read into memory. */
    private static final long MOST_BYTES = 64_000_000;

    private final Path file;
    private final String archive;

    /**
     * @param settingsFolder where the window keeps its settings
     * @param archive folder of the archive
     */
    JournalFile(Path settingsFolder, Path archive) {
        this.archive = archive.toAbsolutePath().normalize().toString();
        String name = UUID.nameUUIDFromBytes(this.archive.getBytes(StandardCharsets.UTF_8)) + ".json";
        file = settingsFolder.resolve("edits").resolve(name);
    }

    Path file() {
        return file;
    }

    /**
     * What was found.
     *
     * @param journal the journal; empty when there was none or it was broken
     * @param remark what a person should know, one sentence
     */
    record Found(EditJournal journal, Optional<String> remark) {}

    /** Reads the journal; a broken one is set aside under another name. */
    Found read() {
        if (!Files.isRegularFile(file)) {
            return new Found(EditJournal.empty(), Optional.empty());
        }
        try {
            if (Files.size(file) > MOST_BYTES) {
                return setAside(TEXTS.text("journal.too.long"));
            }
            return new Found(parsed(Files.readAllBytes(file)), Optional.empty());
        } catch (IOException | IllegalArgumentException e) {
            String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
            return setAside(why.lines().findFirst().orElse(TEXTS.text("journal.unreadable")));
        }
    }

    private Found setAside(String why) {
        Path aside = file.resolveSibling(file.getFileName() + ".broken");
        String sentence;
        try {
            Files.move(file, aside, StandardCopyOption.REPLACE_EXISTING);
            sentence = TEXTS.text("journal.aside", why, aside.getFileName().toString());
        } catch (IOException e) {
            sentence = TEXTS.text("journal.not.aside", why);
        }
        return new Found(EditJournal.empty(), Optional.of(sentence));
    }

    /**
     * Writes the journal and flushes it to the disk.
     *
     * @throws ProblemException with {@link WorkbenchProblem#JOURNAL_NOT_KEPT}
     */
    void write(EditJournal journal) {
        Path fresh = file.resolveSibling(file.getFileName() + ".new");
        try {
            Files.createDirectories(file.getParent());
            byte[] bytes = bytes(journal);
            try (FileChannel channel = FileChannel.open(
                    fresh, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
                ByteBuffer buffer = ByteBuffer.wrap(bytes);
                while (buffer.hasRemaining()) {
                    channel.write(buffer);
                }
                channel.force(true);
            }
            Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new ProblemException(e, WorkbenchProblem.JOURNAL_NOT_KEPT, file, e.getMessage());
        }
    }

    private byte[] bytes(EditJournal journal) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
            json.writeStartObject();
            json.writeNumberField("version", VERSION);
            json.writeStringField("archive", archive);
            edits(json, "done", journal.done());
            edits(json, "undone", journal.undone());
            links(json, "marks", journal.marks());
            links(json, "fits", journal.fits());
            json.writeEndObject();
        }
        return out.toByteArray();
    }

    private static void edits(JsonGenerator json, String name, List<Edit> edits) throws IOException {
        json.writeArrayFieldStart(name);
        for (Edit edit : edits) {
            json.writeStartObject();
            for (Map.Entry<String, String> part : EditText.write(edit).entrySet()) {
                json.writeStringField(part.getKey(), part.getValue());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void links(JsonGenerator json, String name, Map<Long, Long> links) throws IOException {
        json.writeObjectFieldStart(name);
        for (Map.Entry<Long, Long> link : new TreeMap<>(links).entrySet()) {
            json.writeNumberField(link.getKey().toString(), link.getValue());
        }
        json.writeEndObject();
    }

    private EditJournal parsed(byte[] bytes) throws IOException {
        List<Edit> done = new ArrayList<>();
        List<Edit> undone = new ArrayList<>();
        Map<Long, Long> marks = new HashMap<>();
        Map<Long, Long> fits = new HashMap<>();
        int version = 0;
        try (JsonParser json = new JsonFactory().createParser(bytes)) {
            expect(json.nextToken() == JsonToken.START_OBJECT, "no object");
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                String name = json.currentName();
                json.nextToken();
                switch (name) {
                    case "version" -> version = json.getIntValue();
                    case "done" -> readEdits(json, done);
                    case "undone" -> readEdits(json, undone);
                    case "marks" -> readLinks(json, marks);
                    case "fits" -> readLinks(json, fits);
                    default -> json.skipChildren();
                }
            }
            expect(json.currentToken() == JsonToken.END_OBJECT, "cut short");
        }
        expect(version == VERSION, "version " + version);
        return new EditJournal(done, undone, marks, fits);
    }

    private static void readEdits(JsonParser json, List<Edit> into) throws IOException {
        expect(json.currentToken() == JsonToken.START_ARRAY, "no list of edits");
        while (json.nextToken() == JsonToken.START_OBJECT) {
            Map<String, String> parts = new HashMap<>();
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                String name = json.currentName();
                expect(json.nextToken() == JsonToken.VALUE_STRING, "edit without words");
                parts.put(name, json.getText());
            }
            into.add(EditText.read(parts));
        }
        expect(json.currentToken() == JsonToken.END_ARRAY, "list of edits cut short");
    }

    private static void readLinks(JsonParser json, Map<Long, Long> into) throws IOException {
        expect(json.currentToken() == JsonToken.START_OBJECT, "no links");
        while (json.nextToken() == JsonToken.FIELD_NAME) {
            long from = Long.parseLong(json.currentName());
            json.nextToken();
            into.put(from, json.getLongValue());
        }
    }

    private static void expect(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
