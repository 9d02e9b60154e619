import { Link } from '../../parts/Link.tsx';

/** On the page of rules: where the chemistry of fluids and products stands. */
export function FluidsLink() {
  return (
    <section id="fluids" aria-label="Fluids">
      <h2>Fluids</h2>
      <p>
        Critical pH of saliva and plaque fluid, the saturation map, and figures of products: fluoride of a label, acid of a drink, added
        calcium, hypochlorite.
      </p>
      <p>
        <Link to="/fluids">Open the page of fluids</Link>
      </p>
    </section>
  );
}
