"""How a job leaves and comes back."""
