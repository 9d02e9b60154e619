export function App() {
  return (
    <main>
      <h1>Ebbline</h1>
      <p className="opening">Nothing is recorded yet.</p>
    </main>
  );
}
