package tautlog.logger.publish;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;
import javax.net.ssl.X509TrustManager;

/** Whose certificates are believed: those of a file, or the ones that come with Java. Never all. */
public final class Trust {
    private final SSLContext context;
    private final X509TrustManager manager;

    private Trust(SSLContext context, X509TrustManager manager) {
        this.context = context;
        this.manager = manager;
    }

    /** @throws Away if the file cannot be used */
    public static Trust of(Optional<Path> caFile) throws Away {
        try {
            TrustManagerFactory factory = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            factory.init(caFile.isPresent() ? store(caFile.get()) : null);
            for (TrustManager manager : factory.getTrustManagers()) {
                if (manager instanceof X509TrustManager found) {
                    SSLContext context = SSLContext.getInstance("TLS");
                    context.init(null, new TrustManager[] {found}, null);
                    return new Trust(context, found);
                }
            }
            throw new GeneralSecurityException("this Java knows no X.509");
        } catch (GeneralSecurityException | IOException unusable) {
            throw new Away("ca_file " + caFile.map(Path::toString).orElse("of Java") + " cannot be used ("
                    + unusable.getMessage() + "); it holds certificates in PEM form.");
        }
    }

    @SuppressWarnings("NullAway") // a key store is made empty by loading nothing
    private static KeyStore store(Path caFile) throws GeneralSecurityException, IOException {
        KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
        store.load(null, null);
        try (InputStream pem = Files.newInputStream(caFile)) {
            int n = 0;
            for (Certificate certificate :
                    CertificateFactory.getInstance("X.509").generateCertificates(pem)) {
                store.setCertificateEntry("ca-" + n++, certificate);
            }
            if (n == 0) {
                throw new GeneralSecurityException("there is no certificate in it");
            }
        }
        return store;
    }

    public SSLContext context() {
        return context;
    }

    public X509TrustManager manager() {
        return manager;
    }
}
