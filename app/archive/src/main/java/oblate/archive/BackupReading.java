package oblate.archive;
import java.nio.file.Path; import oblate.base.Progress;
final class BackupReading { BackupReading(Path f){} BackupReport restore(Object d, Progress p){ throw new UnsupportedOperationException(); } }
