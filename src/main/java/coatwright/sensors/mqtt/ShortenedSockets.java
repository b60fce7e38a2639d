package coatwright.sensors.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import javax.net.SocketFactory;

/** Makes plain sockets over which no message can be longer than it is ever looked at. */
final class ShortenedSockets extends SocketFactory {
  private final int mostBytes;

  /**
   * @param mostBytes of a message, topic and all
   */
  ShortenedSockets(int mostBytes) {
    this.mostBytes = mostBytes;
  }

  private final class Shortened extends Socket {
    private InputStream stream = InputStream.nullInputStream();
    private boolean opened;

    @Override
    public synchronized InputStream getInputStream() throws IOException {
      if (!opened) {
        stream = new ShortenedMessages(super.getInputStream(), mostBytes);
        opened = true;
      }
      return stream;
    }
  }

  @Override
  public Socket createSocket() {
    return new Shortened();
  }

  @Override
  public Socket createSocket(String host, int port) throws IOException {
    return connected(new InetSocketAddress(host, port));
  }

  @Override
  public Socket createSocket(String host, int port, InetAddress from, int fromPort)
      throws IOException {
    return connected(new InetSocketAddress(host, port));
  }

  @Override
  public Socket createSocket(InetAddress host, int port) throws IOException {
    return connected(new InetSocketAddress(host, port));
  }

  @Override
  public Socket createSocket(InetAddress host, int port, InetAddress from, int fromPort)
      throws IOException {
    return connected(new InetSocketAddress(host, port));
  }

  private Socket connected(InetSocketAddress to) throws IOException {
    Socket socket = new Shortened();
    socket.connect(to);
    return socket;
  }
}
